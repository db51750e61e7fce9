package tautlog.recording;

import java.util.Random;
import tautlog.sample.Evidence;

/**
 * A seeded afternoon at 500 Hz, 25 samples a frame: slack line 60 % of the time, pulls of 4 to 12 kN with stick-slip at 1 to
 * 3 Hz, a snap at the start of each; uniform noise. The shaft turns at 540 rpm half of the time, 6 pulses a revolution, with joint
 * ripple of 3 % and jitter of ±20 µs, a shaft frame each 100 ms; health, switches and a clock fix each second.
 */
final class BenchTrace {
    private static final int FRAME = 25;
    private static final double TICKS_PER_SAMPLE = 2_000.09;
    private static final int SLACK = 0;
    /** The log jumps forward within 80 ms; chosen: the line's own swing is of that order. */
    private static final int SLIP_SAMPLES = 40;

    private static final int SNAP_SAMPLES = 60;

    private final Random random;
    private final int noise;
    private final double countsPerNewton;
    private final int[] counts = new int[FRAME];
    private final long[] pulseTicks = new long[60];
    private long number;
    private double nextPulse = 1_000;
    private long pulses;
    private long shaftFrames;
    private int phase = SLACK;
    private int phaseLeft = 5_000;
    private double level;
    private double slip;
    private double slipStep;
    private boolean slips;
    private int phaseLength;

    BenchTrace(long seed, int noise, double countsPerNewton) {
        this.random = new Random(seed);
        this.noise = noise;
        this.countsPerNewton = countsPerNewton;
    }

    /** Fills {@code out} with the counts of the next samples. */
    void fill(int[] out, int from, int n) {
        for (int i = 0; i < n; i++) {
            out[from + i] = (int) Math.round(tension() * countsPerNewton) + random.nextInt(2 * noise + 1) - noise;
        }
    }

    private double tension() {
        if (--phaseLeft < 0) {
            phase = 1 - phase;
            phaseLeft = (phase == SLACK ? 15 : 10) * 500 + random.nextInt(15 * 500);
            level = 4_000 + random.nextInt(8_000);
            phaseLength = phaseLeft;
            slip = 0;
            slipStep = level * (0.05 + 0.1 * random.nextDouble()) * (1 + random.nextInt(3)) / 500;
        }
        if (phase == SLACK) {
            return 40;
        }
        slips = slip > level * 0.1 || (slips && slip > 0);
        slip += slips ? -level * 0.1 / SLIP_SAMPLES : slipStep;
        int since = phaseLength - phaseLeft;
        double snap = since < SNAP_SAMPLES ? level * Math.sin(Math.PI * since / SNAP_SAMPLES) : 0;
        return level * Math.min(1, since / (double) SNAP_SAMPLES) + slip + snap;
    }

    /** Tells {@code evidence} all of {@code seconds} seconds; {@code outing}, which it reaches, commits every half second. */
    void tell(Evidence evidence, OutingWriter outing, int seconds) throws RecordingException {
        for (int second = 0; second < seconds; second++) {
            for (int half = 0; half < 2; half++) {
                for (int frame = 0; frame < 10; frame++) {
                    frame(evidence);
                    if (frame % 2 == 1) {
                        shaft(evidence);
                    }
                }
                outing.commit();
            }
            long tick = tick(number) + random.nextInt(300);
            evidence.health(tick, 4_950 + random.nextInt(9), 215 + random.nextInt(2), 0);
            evidence.input(number, tick + 40, 1, 7, 0);
            evidence.clock(tick, 1_777_881_600_000_000L + tick + random.nextInt(400));
        }
    }

    /** Tells frames of samples and nothing else. */
    void tellSamples(OutingWriter outing, int seconds) throws RecordingException {
        for (int half = 0; half < 2 * seconds; half++) {
            for (int frame = 0; frame < 10; frame++) {
                frame(outing);
            }
            outing.commit();
        }
    }

    private void frame(Evidence evidence) {
        fill(counts, 0, FRAME);
        evidence.tension(number, tick(number) + random.nextInt(5) - 2, 0, counts, 0, FRAME);
        number += FRAME;
    }

    private void shaft(Evidence evidence) {
        long now = ++shaftFrames * 100_000L + random.nextInt(40);
        int n = 0;
        boolean turns = shaftFrames / 600 % 2 == 1;
        nextPulse = turns ? nextPulse : now;
        while (turns && nextPulse < now) {
            pulseTicks[n++] = (long) nextPulse + random.nextInt(41) - 20;
            pulses++;
            nextPulse += 18_518.5 * (1 + 0.03 * Math.sin(2 * Math.PI * pulses / 3.0 + 0.4));
        }
        evidence.shaft(now, pulses, pulseTicks, n);
    }

    private static long tick(long number) {
        return 1_000_000 + (long) (number * TICKS_PER_SAMPLE);
    }
}
