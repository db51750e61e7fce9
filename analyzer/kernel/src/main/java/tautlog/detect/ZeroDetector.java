package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/**
 * Watches the zero of the slack line: {@code zero-drift} and {@code zero-unproven}. Source: {@code FINDINGS.md}, Sensor trouble.
 *
 * <p>Stretches of 10 s are compared by their sums of counts (and of squares, under a curve), so their order cannot matter.
 */
final class ZeroDetector implements Detector {
    private final Thresholds thresholds;
    private final FindingSink sink;
    private final SquareSum single = new SquareSum();
    private boolean began;
    private long first;
    private long last;
    private long stretch = -1;
    private long next;
    private long least;
    private long greatest;
    private long sum;
    private final SquareSum squares = new SquareSum();
    private boolean proven;
    private long reference;
    private final SquareSum referenceSquares = new SquareSum();
    private boolean excursion;
    private long excursionFirst;
    private long excursionLast;

    ZeroDetector(Thresholds thresholds, FindingSink sink) {
        this.thresholds = thresholds;
        this.sink = sink;
    }

    @Override
    public void run(Run run) {
        if (!began) {
            began = true;
            first = run.first;
        }
        last = run.last();
        if (run.first >= stretchEnd(stretch)) {
            beginStretchOf(run.first);
        }
        if (run.last() < stretchEnd(stretch)) {
            add(run.first, run.n, run.least, run.greatest, run.sum, run.squares);
        } else {
            each(run);
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        quiet.notAfter(stretchEnd(stretch) - 2);
    }

    private void each(Run run) {
        for (int k = 0; k < run.n; k++) {
            long number = run.first + k;
            if (number >= stretchEnd(stretch)) {
                beginStretchOf(number);
            }
            int count = run.count(k);
            single.clear();
            if (thresholds.relations.areCurved()) {
                single.add(count);
            }
            add(number, 1, count, count, count, single);
        }
    }

    private void beginStretchOf(long number) {
        stretch = (number - first) / thresholds.zeroStretch;
        next = first + stretch * thresholds.zeroStretch;
        least = Long.MAX_VALUE;
        greatest = Long.MIN_VALUE;
        sum = 0;
        squares.clear();
    }

    private long stretchEnd(long index) {
        return first + (index + 1) * thresholds.zeroStretch;
    }

    /** Samples after a missing number are left out: the stretch can then not come to its end. */
    private void add(long number, int n, int low, int high, long total, SquareSum totalSquares) {
        if (number != next) {
            return;
        }
        next += n;
        least = Math.min(least, low);
        greatest = Math.max(greatest, high);
        sum += total;
        squares.add(totalSquares);
        if (next == stretchEnd(stretch) && isSlackAndSteady()) {
            compare();
        }
    }

    private boolean isSlackAndSteady() {
        return least > thresholds.pushed
                && greatest < thresholds.pullFrom
                && thresholds.relations.isSteady(least, greatest);
    }

    private void compare() {
        if (!proven) {
            proven = true;
            reference = sum;
            referenceSquares.copyFrom(squares);
        } else if (thresholds.relations.isDrift(sum, squares, reference, referenceSquares)) {
            if (!excursion) {
                excursion = true;
                excursionFirst = next - thresholds.zeroStretch;
            }
            excursionLast = next - 1;
        } else {
            tellExcursion();
        }
    }

    private void tellExcursion() {
        if (excursion) {
            excursion = false;
            sink.finding(new Trouble(TroubleKind.ZERO_DRIFT, excursionFirst, excursionLast));
        }
    }

    @Override
    public void gap(Gap gap) {
        // seen by the jump in numbers
    }

    @Override
    public void end() {
        tellExcursion();
        if (began && !proven && last - first + 1 > thresholds.unprovenAfter) {
            sink.finding(new Trouble(TroubleKind.ZERO_UNPROVEN, first, last));
        }
    }
}
