package tautlog.logger;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import tautlog.logger.wire.FrameEncoder;
import tautlog.sample.Instrument;

/**
 * An instrument made of calls: samples at 500 Hz in frames of 25, a shaft that turns at 540 rpm, a HELLO each second. 1 count
 * is 0.01 N in {@link LoggerFolder}'s calibration.
 */
public final class SmallInstrument {
    public static final int RATE = 500;
    private static final int FRAME = 25;
    private static final int TICKS_PER_SAMPLE = 1_000_000 / RATE;
    private static final int TICKS_PER_PULSE = 1_000_000 * 60 / (540 * 6);

    private final Instrument instrument;
    private final FrameEncoder encoder = new FrameEncoder();
    private final byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];
    private final List<Integer> sent = new ArrayList<>();
    private ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private int seq;
    private long pulses;
    private int unsent;

    /** @param boot another for each start of the instrument */
    public SmallInstrument(long boot) {
        instrument = new Instrument("TL-0001", 1, 0, boot, 1_000_000, RATE * 1_000L, 8_388_607, 6);
    }

    public Instrument instrument() {
        return instrument;
    }

    /** Every count sent so far; the number of the first is 0. */
    public List<Integer> sent() {
        return sent;
    }

    /** The bytes since the last call. */
    public byte[] take() {
        byte[] taken = bytes.toByteArray();
        bytes = new ByteArrayOutputStream();
        return taken;
    }

    /** A quiet line, a snap to 25 kN (above the 20 kN limit), a pull at 12 kN, slack again: 8 s. */
    public SmallInstrument haul() {
        return hold(0, 500)
                .ramp(0, 2_500_000, 10)
                .ramp(2_500_000, 1_200_000, 20)
                .hold(1_200_000, 970)
                .hold(0, 2_500);
    }

    /** {@code samples} samples around {@code counts}, a multiple of 25 in all calls together. */
    public SmallInstrument hold(int counts, int samples) {
        return ramp(counts, counts, samples);
    }

    private final List<Integer> waiting = new ArrayList<>();

    private SmallInstrument ramp(int from, int to, int samples) {
        for (int k = 0; k < samples; k++) {
            int noise = (sent.size() + waiting.size()) * 7919 % 17 - 8;
            waiting.add(from + (int) ((long) (to - from) * k / samples) + noise);
            if (waiting.size() == FRAME) {
                sendFrame();
            }
        }
        return this;
    }

    /** Nothing is sent for so long, by its own counter; the numbers go on, as if the line had been cut. */
    public SmallInstrument pause(int seconds) {
        unsent += seconds * RATE;
        return this;
    }

    /** By how much its counter is ahead of its first sample's, in seconds. */
    public double seconds() {
        return (double) number() / RATE;
    }

    private int number() {
        return sent.size() + unsent;
    }

    private void sendFrame() {
        int number = number();
        long tick = tick(number);
        if (number % RATE == 0) {
            hello(tick);
        }
        int[] counts = waiting.stream().mapToInt(Integer::intValue).toArray();
        send(encoder.tension(frame, 0, seq, tick, number, 0, counts, 0, FRAME));
        sent.addAll(waiting);
        waiting.clear();
        if (sent.size() % 50 == 0) {
            shaft(tick(number()));
        }
    }

    private static long tick(int number) {
        return 1_000_000L + (long) number * TICKS_PER_SAMPLE;
    }

    public SmallInstrument hello(long tick) {
        send(encoder.hello(frame, 0, seq, instrument, tick));
        return this;
    }

    /** The selector is turned. */
    public SmallInstrument selector(int position) {
        send(encoder.input(frame, 0, seq, tick(number()), position, 0, 0));
        return this;
    }

    /** The mark button is pressed, or let go. */
    public SmallInstrument button(boolean isDown) {
        send(encoder.input(frame, 0, seq, tick(number()), 0, 1, isDown ? 1 : 0));
        return this;
    }

    private void shaft(long now) {
        long due = now / TICKS_PER_PULSE;
        int n = (int) Math.min(60, due - pulses);
        int[] ages = new int[Math.max(0, n)];
        for (int i = 0; i < n; i++) {
            ages[i] = (int) (now - (due - n + 1 + i) * TICKS_PER_PULSE);
        }
        pulses = due;
        send(encoder.shaft(frame, 0, seq, now, pulses, ages, n));
    }

    private void send(int n) {
        seq = seq + 1 & 0xff;
        bytes.write(frame, 0, n);
    }
}
