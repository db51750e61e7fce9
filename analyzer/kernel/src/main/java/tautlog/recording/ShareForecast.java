package tautlog.recording;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Second;

/**
 * What the share of a second of one hookup follows from: (greatest count − zero) · share of a count, to a few steps of a double under a
 * straight calibration. Under a curve it foretells nothing.
 */
record ShareForecast(double zeroCounts, double sharePerCount) {
    /** Of a share that is not foretold: what stands for its surprise. */
    static final long WHOLE = -(1 << 20);
    /** Seconds of which as many must be foretold before the two doubles of a forecast are worth their bytes. */
    private static final int WORTHWHILE = 4;

    /** What foretells most of {@code seconds}, which are of one hookup; empty when it would not be worth its bytes. */
    static Optional<ShareForecast> of(List<Second> seconds) {
        int[] places = placesOfDistinctCounts(seconds);
        Second low = seconds.get(places[0]);
        Second middle = seconds.get(places[places.length / 2]);
        Second high = seconds.get(places[places.length - 1]);
        // a second in which the hookup changed follows from another count: of three one may be such
        ShareForecast best = through(low, high);
        for (ShareForecast other : List.of(through(low, middle), through(middle, high))) {
            best = other.foretold(seconds) > best.foretold(seconds) ? other : best;
        }
        int foretold = best.foretold(seconds);
        return foretold >= WORTHWHILE + (seconds.size() - foretold) ? Optional.of(best) : Optional.empty();
    }

    /** Where in {@code seconds} each greatest count stands first, by rising count. */
    private static int[] placesOfDistinctCounts(List<Second> seconds) {
        long[] sorted = new long[seconds.size()];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = ((long) seconds.get(i).greatest() << 32) | i;
        }
        Arrays.sort(sorted);
        int n = 0;
        for (int i = 0; i < sorted.length; i++) {
            if (i == 0 || sorted[i] >> 32 != sorted[i - 1] >> 32) {
                sorted[n++] = sorted[i];
            }
        }
        return Arrays.stream(sorted, 0, n).mapToInt(place -> (int) place).toArray();
    }

    private static ShareForecast through(Second low, Second high) {
        if (low.greatest() == high.greatest()) {
            return new ShareForecast(low.greatest() - 1.0, low.share());
        }
        double perCount = (high.share() - low.share()) / ((double) high.greatest() - low.greatest());
        // exact where the share is least
        Second near = Math.abs(low.share()) < Math.abs(high.share()) ? low : high;
        return new ShareForecast(near.greatest() - near.share() / perCount, perCount);
    }

    private int foretold(List<Second> seconds) {
        int foretold = 0;
        for (Second second : seconds) {
            foretold += surprise(second) == WHOLE ? 0 : 1;
        }
        return foretold;
    }

    /** By how many steps of a double the share differs from the one foretold; {@link #WHOLE} when it is too far from it. */
    long surprise(Second second) {
        double foretold = share(second.greatest());
        long surprise = Double.doubleToRawLongBits(second.share()) - Double.doubleToRawLongBits(foretold);
        return Double.isFinite(foretold) && surprise > WHOLE && surprise < -WHOLE ? surprise : WHOLE;
    }

    /** The share that is {@code surprise} steps from the one foretold. */
    double share(int greatest, long surprise) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(share(greatest)) + surprise);
    }

    private double share(int greatest) {
        return (greatest - zeroCounts) * sharePerCount;
    }
}
