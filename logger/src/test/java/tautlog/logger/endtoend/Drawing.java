package tautlog.logger.endtoend;

import java.util.Arrays;
import java.util.NavigableMap;
import java.util.TreeMap;
import tautlog.logger.endtoend.IndependentInstrument.Fate;

/**
 * Tension, shaft speed, switches and a bad line drawn with a ruler, so that every finding can be read off the drawing.
 *
 * <p>Positions are samples at 500 Hz from the first (k = 0); one count is 0.01 N. Nothing of the programs is used here.
 */
final class Drawing {
    static final int COUNTS_PER_NEWTON = 100;

    /** Bits of the instrument's switches, as on the wire. */
    static final int BUTTON = 1;

    static final int CLUTCH = 2;
    static final int BRAKE = 4;

    /** How the switches stand from some sample on. */
    record Switches(int selector, int state) {}

    final int[] counts;
    final double[] rpm;
    final Fate[] fates;
    /** By the sample before which the instrument says so; empty when it has no switches. */
    final NavigableMap<Integer, Switches> switches = new TreeMap<>();

    Drawing(int samples) {
        counts = new int[samples];
        rpm = new double[samples];
        fates = new Fate[samples / IndependentInstrument.SAMPLES_PER_FRAME];
        Arrays.fill(fates, Fate.ARRIVES);
    }

    int samples() {
        return counts.length;
    }

    void hold(int from, int to, int newtons) {
        Arrays.fill(counts, from, to + 1, newtons * COUNTS_PER_NEWTON);
    }

    void ramp(int from, int to, int fromNewtons, int toNewtons) {
        for (int k = from; k <= to; k++) {
            counts[k] =
                    (int) (100 * (fromNewtons + (long) (toNewtons - fromNewtons) * (k - from) / (double) (to - from)));
        }
    }

    void set(int from, int... newtons) {
        for (int k = 0; k < newtons.length; k++) {
            counts[from + k] = newtons[k] * COUNTS_PER_NEWTON;
        }
    }

    /** Lays ±3 counts on everything, and cuts off what the converter cannot show. */
    void ditherAndClip() {
        for (int k = 0; k < counts.length; k++) {
            int dither = (int) (k * 7_919L % 7) - 3;
            counts[k] = Math.min(counts[k] + dither, IndependentInstrument.FULL_SCALE);
        }
    }

    void turning(int from, int to, double speed) {
        Arrays.fill(rpm, from, to, speed);
    }

    /** The switches stand so from {@code sample} on, a multiple of {@link IndependentInstrument#SAMPLES_PER_FRAME}. */
    void switched(int sample, int selector, int state) {
        switches.put(sample, new Switches(selector, state));
    }

    void lose(int from, int to) {
        Arrays.fill(
                fates,
                from / IndependentInstrument.SAMPLES_PER_FRAME,
                to / IndependentInstrument.SAMPLES_PER_FRAME,
                Fate.NEVER_SENT);
    }

    /** The first sample from {@code from} on that is at or above {@code newtons}. */
    int firstAtOrAbove(int from, int newtons) {
        int k = from;
        while (counts[k] < newtons * COUNTS_PER_NEWTON) {
            k++;
        }
        return k;
    }

    /** The first sample from {@code from} on that is above {@code newtons}. */
    int firstAbove(int from, int newtons) {
        int k = from;
        while (counts[k] <= newtons * COUNTS_PER_NEWTON) {
            k++;
        }
        return k;
    }

    /** The last sample before {@code before} that is at or above {@code newtons}. */
    int lastAtOrAbove(int before, int newtons) {
        int k = before - 1;
        while (counts[k] < newtons * COUNTS_PER_NEWTON) {
            k--;
        }
        return k;
    }

    /** The last sample before {@code before} that is above {@code newtons}. */
    int lastAbove(int before, int newtons) {
        int k = before - 1;
        while (counts[k] <= newtons * COUNTS_PER_NEWTON) {
            k--;
        }
        return k;
    }

    /** The latest sample up to {@code last} that has {@code count}. */
    int latestWith(int count, int last) {
        int k = last;
        while (counts[k] != count) {
            k--;
        }
        return k;
    }

    int greatest(int from, int to) {
        return Arrays.stream(counts, from, to + 1).max().getAsInt();
    }

    int least(int from, int to) {
        return Arrays.stream(counts, from, to + 1).min().getAsInt();
    }
}
