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
    private final SteadyStretch stretch;
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
        stretch = new SteadyStretch(thresholds.zeroStretch);
    }

    @Override
    public void run(Run run) {
        if (!began) {
            began = true;
            first = run.first;
        }
        last = run.last();
        if (run.first >= stretch.end()) {
            beginStretchOf(run.first);
        }
        if (run.last() < stretch.end()) {
            add(run.first, run.n, run.least, run.greatest, run.sum, run.squares);
        } else {
            each(run);
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        quiet.notAfter(stretch.end() - 2);
    }

    private void each(Run run) {
        for (int k = 0; k < run.n; k++) {
            long number = run.first + k;
            if (number >= stretch.end()) {
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
        stretch.beginOf(number, first);
        squares.clear();
    }

    private void add(long number, int n, int low, int high, long total, SquareSum totalSquares) {
        if (stretch.takes(number)) {
            squares.add(totalSquares);
        }
        if (stretch.add(number, n, low, high, total) && stretch.isSlack(thresholds)) {
            compare(stretch.sum());
        }
    }

    private void compare(long sum) {
        if (!proven) {
            proven = true;
            reference = sum;
            referenceSquares.copyFrom(squares);
        } else if (thresholds.relations.isDrift(sum, squares, reference, referenceSquares)) {
            if (!excursion) {
                excursion = true;
                excursionFirst = stretch.end() - stretch.length();
            }
            excursionLast = stretch.end() - 1;
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
