package tautlog.logger.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tautlog.sample.Instrument;

/** Writes down every call as a line of text, so that tests compare lists. */
final class FrameText implements FrameSink {
    final List<String> lines = new ArrayList<>();

    /** What {@code decoder} makes of {@code bytes}, given whole. */
    static List<String> of(byte[] bytes) {
        FrameText text = new FrameText();
        new FrameDecoder().feed(bytes, 0, bytes.length, text);
        return text.lines;
    }

    @Override
    public void hello(int seq, Instrument instrument, long tick) {
        lines.add("hello " + seq + " " + instrument + " at " + tick);
    }

    @Override
    public void tension(int seq, long tick, long number, int flags, int[] counts, int n) {
        String values = Arrays.toString(Arrays.copyOf(counts, n));
        lines.add("tension " + seq + " tick " + tick + " number " + number + " flags " + flags + " " + values);
    }

    @Override
    public void shaft(int seq, long tick, long pulses, int[] ages, int n) {
        lines.add(
                "shaft " + seq + " tick " + tick + " pulses " + pulses + " " + Arrays.toString(Arrays.copyOf(ages, n)));
    }

    @Override
    public void health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        lines.add("health " + seq + " tick " + tick + " " + supplyMillivolts + " mV " + temperatureDecidegrees
                + " dC lost " + lost);
    }

    @Override
    public void input(int seq, long tick, int selector, int present, int state) {
        lines.add(
                "input " + seq + " tick " + tick + " selector " + selector + " present " + present + " state " + state);
    }

    @Override
    public void rejected(FrameFault fault) {
        lines.add(fault.name());
    }
}
