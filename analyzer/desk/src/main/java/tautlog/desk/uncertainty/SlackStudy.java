package tautlog.desk.uncertainty;

import java.util.OptionalDouble;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.ZeroSource;

/**
 * What the slack line of one outing tells of the instrument: where the zero was, and how the readings scatter.
 *
 * <p>Looks at the stretches of 10 s that {@code analyzer/FINDINGS.md} defines under zero-drift: no gap, |T| below pull_from, range at
 * most 1 % of the rated pull. Takes counts from which a moved zero has been taken.
 */
public final class SlackStudy extends QuietEvidence {
    private static final int SECONDS = 10;

    private final Calibration calibration;
    private final int length;
    private final double pullFromNewtons;
    private final double steadyNewtons;

    private long first = Long.MIN_VALUE;
    private long next = Long.MIN_VALUE;
    private long end = Long.MIN_VALUE;
    private int least;
    private int greatest;
    private int base;
    private long sum;
    private long squares;

    private int stretches;
    private double farthestNewtons;
    private double squaredDeviations;
    private double greatestShiftNewtons;

    /** @param calibration of the line's tension */
    public SlackStudy(Instrument instrument, Rig rig, Calibration calibration) {
        this.calibration = calibration;
        length = instrument.rate().samplesIn(java.math.BigDecimal.valueOf(SECONDS));
        pullFromNewtons = rig.detect().pullFromNewtons().doubleValue();
        steadyNewtons = rig.ratedPullNewtons().doubleValue() / 100;
    }

    /** What was taken off is known only as far as slack was slack: the interval holds all of it. */
    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        double moved = calibration.newtons(calibration.zeroCounts().doubleValue() + shiftCounts);
        greatestShiftNewtons = Math.max(greatestShiftNewtons, Math.abs(moved));
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        if (first == Long.MIN_VALUE) {
            first = number;
        }
        for (int i = 0; i < n; i++) {
            sample(number + i, counts[from + i]);
        }
    }

    private void sample(long number, int count) {
        if (number >= end) {
            begin(number, count);
        }
        if (number != next) {
            return; // after a missing number the stretch can not come to its end
        }
        next++;
        least = Math.min(least, count);
        greatest = Math.max(greatest, count);
        long above = (long) count - base;
        sum += above;
        squares += above * above;
        if (next == end) {
            take();
        }
    }

    private void begin(long number, int count) {
        base = count; // small sums, whatever the zero

        next = first + (number - first) / length * length;
        end = next + length;
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        sum = 0;
        squares = 0;
    }

    private void take() {
        double low = calibration.newtons(least);
        double high = calibration.newtons(greatest);
        if (low > -pullFromNewtons && high < pullFromNewtons && high - low <= steadyNewtons) {
            stretches++;
            farthestNewtons = Math.max(farthestNewtons, Math.abs(calibration.newtons(base + (double) sum / length)));
            squaredDeviations += squares - (double) sum * sum / length;
        }
    }

    /**
     * How far the zero may be off at any time of the outing.
     *
     * <p>Of n places equally likely within unknown bounds, one more lies beyond c times the farthest (c ≥ 1) with c⁻ⁿ/(n + 1): c is
     * chosen for 5 %. It is (n + 1)/n at least, where the bounds themselves are to be expected: a zero that drifts one way is there at
     * the end. All of the greatest shift is added: a load that hung there would have been taken off with it.
     *
     * @return empty when no slack stretch was seen
     */
    OptionalDouble zeroBoundNewtons() {
        if (stretches == 0) {
            return OptionalDouble.empty();
        }
        double n = stretches;
        double beyond = Math.max((n + 1) / n, Math.pow((1 - Interval.COVERAGE) * (n + 1), -1 / n));
        return OptionalDouble.of(greatestShiftNewtons + beyond * farthestNewtons);
    }

    /** Standard deviation of the readings while nothing pulls, in counts; empty when no slack stretch was seen. */
    OptionalDouble noiseCounts() {
        return stretches == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.sqrt(squaredDeviations / ((double) stretches * (length - 1))));
    }
}
