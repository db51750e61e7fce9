package tautlog.logger.wire;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import tautlog.sample.Instrument;

/** Writes down every call as the line that {@code firmware-notes/reference/driver.c} prints for it and reads. */
final class CFrameText implements FrameSink, BeaconSink {
    private static final int ID_LENGTH = 8;

    final List<String> lines = new ArrayList<>();

    /** What the logger makes of {@code bytes}. */
    static List<String> ofInstrument(byte[] bytes) {
        CFrameText text = new CFrameText();
        new FrameDecoder().feed(bytes, 0, bytes.length, text);
        return text.lines;
    }

    /** What the instrument makes of {@code bytes}. */
    static List<String> ofLogger(byte[] bytes) {
        CFrameText text = new CFrameText();
        new BeaconDecoder().feed(bytes, 0, bytes.length, text);
        return text.lines;
    }

    private void add(String kind, Object... fields) {
        StringBuilder line = new StringBuilder(kind);
        for (Object field : fields) {
            line.append(' ').append(field);
        }
        lines.add(line.toString());
    }

    private void addList(String head, int[] values, int n) {
        StringBuilder line = new StringBuilder(head).append(' ').append(n);
        Arrays.stream(values, 0, n).forEach(value -> line.append(' ').append(value));
        lines.add(line.toString());
    }

    @Override
    public void hello(int seq, Instrument i, long tick) {
        byte[] id = Arrays.copyOf(i.id().getBytes(StandardCharsets.US_ASCII), ID_LENGTH);
        add(
                "hello",
                seq,
                i.firmwareMajor(),
                i.firmwareMinor(),
                HexFormat.of().formatHex(id),
                i.boot(),
                tick,
                i.tickHz(),
                i.rateMillihertz(),
                i.fullScale(),
                i.pulsesPerRevolution());
    }

    @Override
    public void tension(int seq, long tick, long number, int flags, int[] counts, int n) {
        addList("tension " + seq + " " + tick + " " + number + " " + flags, counts, n);
    }

    @Override
    public void shaft(int seq, long tick, long pulses, int[] ages, int n) {
        addList("shaft " + seq + " " + tick + " " + pulses, ages, n);
    }

    @Override
    public void health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        add("health", seq, tick, supplyMillivolts, temperatureDecidegrees, lost);
    }

    @Override
    public void input(int seq, long tick, int selector, int present, int state) {
        add("input", seq, tick, selector, present, state);
    }

    @Override
    public void beacon(int seq, BeaconState state) {
        add("beacon", seq, state.code());
    }

    @Override
    public void rejected(FrameFault fault) {
        lines.add(fault.name());
    }
}
