package tautlog.logger.endtoend;

import java.util.Arrays;
import tautlog.logger.endtoend.IndependentInstrument.Fate;

/**
 * 105 seconds of tension and shaft speed drawn with a ruler, so that every finding can be read off the drawing.
 *
 * <p>Positions are samples at 500 Hz from the first (k = 0); one count is 0.01 N; ±3 counts of dither lie on everything.
 * The rig: rated pull 40 kN, limit 12 kN (choker marked 16 kN, factor 0.75; proof 24 kN, breaking 48 kN).
 */
final class ScriptedTrace {
    static final int SAMPLES = 52_500;

    final int[] counts = new int[SAMPLES];
    final double[] rpm = new double[SAMPLES];
    final Fate[] fates = new Fate[SAMPLES / IndependentInstrument.SAMPLES_PER_FRAME];

    ScriptedTrace() {
        tension();
        shaft();
        line();
    }

    private void tension() {
        hold(0, 2_500, 0);
        ramp(2_500, 2_510, 0, 10_000); // a slack line snaps tight
        ramp(2_510, 2_550, 10_000, 4_000);
        hold(2_550, 6_000, 4_000);
        ramp(6_000, 6_500, 4_000, 3_000);
        hold(6_500, 7_500, 3_000);
        ramp(7_500, 7_504, 3_000, 11_500); // the butt meets a stump
        ramp(7_504, 7_604, 11_500, 5_000);
        hold(7_604, 9_000, 5_000);
        ramp(9_000, 9_500, 5_000, 14_000); // past the limit
        hold(9_500, 11_500, 14_000);
        ramp(11_500, 12_000, 14_000, 10_000);
        hold(12_000, 13_000, 10_000);
        set(13_001, 7_500, 5_000, 2_500, 500); // a part lets go
        hold(13_005, 17_500, 0);
        ramp(17_500, 18_000, 0, 5_000);
        hold(18_000, 30_000, 5_000);
        ramp(30_000, 30_500, 5_000, 0);
        hold(30_500, 35_000, 0);
        ramp(35_000, 35_500, 0, 5_000);
        hold(35_500, 40_000, 5_000);
        ramp(40_000, 40_500, 5_000, 0);
        hold(40_500, 47_500, 0);
        ramp(47_500, 48_500, 0, 20_000);
        hold(48_500, 49_000, 20_000);
        ramp(49_000, 49_500, 20_000, 26_000); // the converter ends at 25 kN
        ramp(49_500, 50_000, 26_000, 13_000);
        ramp(50_000, 50_500, 13_000, 5_000);
        hold(50_500, SAMPLES - 1, 5_000);
        for (int k = 0; k < SAMPLES; k++) {
            int dither = (int) (k * 7_919L % 7) - 3;
            counts[k] = Math.min(counts[k] + dither, IndependentInstrument.FULL_SCALE);
        }
    }

    private void shaft() {
        Arrays.fill(rpm, 540);
        Arrays.fill(rpm, 0, 13_000, 300);
        Arrays.fill(rpm, 13_000, 17_500, 420); // runs up when the load is gone
        Arrays.fill(rpm, 22_525, 23_025, 300); // pulled down, recovers
        Arrays.fill(rpm, 32_000, 43_000, 0); // the brake holds
    }

    private void line() {
        Arrays.fill(fates, Fate.ARRIVES);
        lose(10_000, 10_050); // short, in the middle of the overload
        lose(37_500, 37_800); // long, in a pull
        lose(45_000, 46_000); // longer than a second, in slack
        fates[42_000 / 25] = Fate.CRC_SPOILED;
        fates[42_100 / 25] = Fate.CUT_SHORT;
        fates[42_200 / 25] = Fate.SENT_TWICE;
        fates[42_300 / 25] = Fate.GARBAGE_BEFORE;
    }

    private void lose(int from, int to) {
        Arrays.fill(fates, from / 25, to / 25, Fate.NEVER_SENT);
    }

    private void hold(int from, int to, int newtons) {
        Arrays.fill(counts, from, to + 1, newtons * 100);
    }

    private void ramp(int from, int to, int fromNewtons, int toNewtons) {
        for (int k = from; k <= to; k++) {
            counts[k] =
                    (int) (100 * (fromNewtons + (long) (toNewtons - fromNewtons) * (k - from) / (double) (to - from)));
        }
    }

    private void set(int from, int... newtons) {
        for (int k = 0; k < newtons.length; k++) {
            counts[from + k] = newtons[k] * 100;
        }
    }

    /** The first sample from {@code from} on that is at or above {@code newtons}. */
    int firstAtOrAbove(int from, int newtons) {
        int k = from;
        while (counts[k] < newtons * 100) {
            k++;
        }
        return k;
    }

    /** The last sample before {@code before} that is at or above {@code newtons}. */
    int lastAtOrAbove(int before, int newtons) {
        int k = before - 1;
        while (counts[k] < newtons * 100) {
            k--;
        }
        return k;
    }

    int greatest(int from, int to) {
        return Arrays.stream(counts, from, to + 1).max().getAsInt();
    }
}
