package tautlog.logger.cli;

import java.io.IOException;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.wire.FrameEncoder;
import tautlog.sample.Instrument;

/**
 * An instrument at 1,000 samples a second whose time passes as fast as the logger takes it: each minute a slack line, a pull at 12
 * kN, once a snap to 25 kN on a limit of 20 kN; a shaft at 540 rpm all the while. 1 count is 0.01 N.
 */
final class WeekOfPulls {
    static final int RATE = 1_000;
    private static final int MINUTE = 60 * RATE;
    private static final int FRAME = 50;
    private static final int TICKS_PER_SAMPLE = 1_000_000 / RATE;
    private static final int SHAFT_SAMPLES = RATE / 10;
    private static final int TICKS_PER_PULSE = 1_000_000 * 60 / (540 * 6);
    private static final int BUFFER = 1 << 16;
    private static final int[] COUNTS = minute();

    private final FrameEncoder encoder = new FrameEncoder();
    private final PseudoTerminal line;
    private final byte[] out = new byte[BUFFER];
    private int used;
    private Instrument instrument = boot(0);
    private long number;
    private long pulses;
    private int seq;

    WeekOfPulls(PseudoTerminal line) {
        this.line = line;
    }

    private static int[] minute() {
        int[] counts = new int[MINUTE];
        for (int i = 0; i < MINUTE; i++) {
            int tension = i < 20_000 ? 0 : i < 20_020 ? 2_500_000 : i < 50_000 ? 1_200_000 : 0;
            counts[i] = tension + i * 7_919 % 17 - 8;
        }
        return counts;
    }

    private static Instrument boot(long boot) {
        return new Instrument("TL-0001", 1, 0, boot, 1_000_000, RATE * 1_000L, 8_388_607, 6);
    }

    /** The instrument starts again: another outing. */
    void restart(long boot) throws IOException, InterruptedException {
        flush();
        instrument = boot(boot);
        number = 0;
        pulses = 0;
    }

    /** So much of its time; a whole number of seconds. */
    void seconds(long seconds) throws IOException, InterruptedException {
        long end = number + seconds * RATE;
        while (number < end) {
            frame();
        }
        flush();
    }

    private void frame() throws IOException, InterruptedException {
        long tick = tick(number);
        if (number % RATE == 0) {
            sent(encoder.hello(out, used, next(), instrument, tick));
        }
        int[] counts = COUNTS;
        sent(encoder.tension(out, used, next(), tick, number, 0, counts, (int) (number % MINUTE), FRAME));
        number += FRAME;
        if (number % SHAFT_SAMPLES == 0) {
            shaft(tick(number));
        }
    }

    private void shaft(long now) throws IOException, InterruptedException {
        long due = now / TICKS_PER_PULSE;
        int n = (int) Math.min(60, due - pulses);
        int[] ages = new int[n];
        for (int i = 0; i < n; i++) {
            ages[i] = (int) (now - (due - n + 1 + i) * TICKS_PER_PULSE);
        }
        pulses = due;
        sent(encoder.shaft(out, used, next(), now, pulses, ages, n));
    }

    private static long tick(long number) {
        return 1_000_000L + number * TICKS_PER_SAMPLE;
    }

    private int next() {
        seq = seq + 1 & 0xff;
        return seq;
    }

    private void sent(int end) throws IOException, InterruptedException {
        used = end;
        if (used > BUFFER - FrameEncoder.LONGEST_FRAME) {
            flush();
        }
    }

    private void flush() throws IOException, InterruptedException {
        line.write(out, 0, used);
        used = 0;
    }
}
