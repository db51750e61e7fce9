package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.stat.regression.SimpleRegression;
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
    private static final int LEAST_FOR_A_LINE = 3;
    /** Share of the squares that a line explains; chosen: of eight zeros without an order one set in 400 is taken for a line. */
    private static final double A_LINE = 0.8;

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

    private record Seen(long number, double newtons) {}

    private final List<Seen> zeros = new ArrayList<>();
    private long lastNumber;
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
        lastNumber = number + n - 1;
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
            zeros.add(new Seen(end - length / 2, calibration.newtons(base + (double) sum / length)));
            squaredDeviations += squares - (double) sum * sum / length;
        }
    }

    /**
     * How far the zero may be off at any time of the outing, by what slack saw of it. A zero that went one way is a straight line of time; what
     * it comes to at the outing's ends is always there in full.
     *
     * <p>All of the greatest shift is added: a load that hung there would have been taken off with it.
     *
     * @return empty when no slack stretch was seen
     */
    Optional<ZeroDoubt> zero() {
        if (zeros.isEmpty()) {
            return Optional.empty();
        }
        SimpleRegression drift = new SimpleRegression();
        zeros.forEach(seen -> drift.addData((double) (seen.number - first), seen.newtons));
        boolean oneWay = zeros.size() >= LEAST_FOR_A_LINE && drift.getRSquare() > A_LINE;
        double lean = oneWay
                ? Math.max(Math.abs(drift.predict(0)), Math.abs(drift.predict((double) (lastNumber - first))))
                : 0;
        double farthest = zeros.stream()
                .mapToDouble(seen ->
                        Math.abs(oneWay ? seen.newtons - drift.predict((double) (seen.number - first)) : seen.newtons))
                .max()
                .orElseThrow();
        return Optional.of(ZeroDoubt.seen(zeros.size(), greatestShiftNewtons + lean, farthest));
    }

    /** Standard deviation of the readings while nothing pulls, in counts; empty when no slack stretch was seen. */
    OptionalDouble noiseCounts() {
        return zeros.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.sqrt(squaredDeviations / ((double) zeros.size() * (length - 1))));
    }
}
