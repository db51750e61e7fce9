package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Finding.TroubleKind;

/** The paragraph Sensor trouble. */
final class Troubles {
    private final Line line;

    Troubles(Line line) {
        this.line = line;
    }

    List<Finding.Trouble> all() {
        List<Finding.Trouble> troubles = new ArrayList<>();
        gaps(troubles);
        endStops(troubles);
        openBridges(troubles);
        drifts(troubles);
        oneSamplePeaks(troubles);
        return troubles;
    }

    /**
     * "a jump between two neighbouring frames with more than N(1 s) numbers missing, between any two samples whether flagged or not; start and
     * end are the samples before and after it."
     */
    private void gaps(List<Finding.Trouble> troubles) {
        for (int f = 1; f < line.data.frames().size(); f++) {
            long before = line.data.frames().get(f - 1).lastNumber();
            long after = line.data.frames().get(f).number();
            if (after - before - 1 > line.samplesIn("1")) {
                troubles.add(new Finding.Trouble(TroubleKind.GAP, before, after));
            }
        }
    }

    /** "one finding for each maximal run of consecutive present samples at the end stop …. A gap ends a run." */
    private void endStops(List<Finding.Trouble> troubles) {
        int place = 0;
        while (place < line.size) {
            if (line.isAtEndStop(place)) {
                int last = place;
                while (last + 1 < line.size && line.gapBefore(last + 1) == 0 && line.isAtEndStop(last + 1)) {
                    last++;
                }
                troubles.add(new Finding.Trouble(TroubleKind.END_STOP, line.number[place], line.number[last]));
                place = last;
            }
            place++;
        }
    }

    /** "one finding for each maximal run of samples in flagged frames with no unflagged sample between". */
    private void openBridges(List<Finding.Trouble> troubles) {
        List<OutingData.Frame> run = new ArrayList<>();
        for (OutingData.Frame frame : line.data.frames()) {
            if (frame.isOpenBridge()) {
                run.add(frame);
            } else {
                openBridge(run, troubles);
                run.clear();
            }
        }
        openBridge(run, troubles);
    }

    private static void openBridge(List<OutingData.Frame> run, List<Finding.Trouble> troubles) {
        if (!run.isEmpty()) {
            long last = run.get(run.size() - 1).lastNumber();
            troubles.add(new Finding.Trouble(TroubleKind.OPEN_BRIDGE, run.get(0).number(), last));
        }
    }

    /**
     * "the mean over a 10 s stretch … differs from the outing's first such mean by more than drift (200 N); one finding per excursion";
     * "zero-unproven: an outing of more than 10 minutes without such a stretch".
     */
    private void drifts(List<Finding.Trouble> troubles) {
        if (line.isEmpty()) {
            return;
        }
        long length = line.samplesIn("10");
        List<Integer> stretches = new ArrayList<>();
        for (long from = line.first(); from + length - 1 <= line.last(); from += length) {
            if (line.isPresent(from) && isQuietStretch(line.placeOf(from), length)) {
                stretches.add(line.placeOf(from));
            }
        }
        if (stretches.isEmpty() && line.last() - line.first() + 1 > line.samplesIn("600")) {
            troubles.add(new Finding.Trouble(TroubleKind.ZERO_UNPROVEN, line.first(), line.last()));
        }
        int q = 0;
        while (q < stretches.size()) {
            int first = q;
            while (q < stretches.size() && drifts(stretches.get(0), stretches.get(q), length)) {
                q++;
            }
            if (q > first) {
                long end = line.number[stretches.get(q - 1)] + length - 1;
                troubles.add(new Finding.Trouble(TroubleKind.ZERO_DRIFT, line.number[stretches.get(first)], end));
            }
            q++;
        }
    }

    /** "a 10 s stretch (…, without a gap) in which |T| < pull_from and greatest − least ≤ 1 % of R". */
    private boolean isQuietStretch(int first, long length) {
        int last = (int) (first + length - 1);
        if (last >= line.size || !line.isStretch(first, last)) {
            return false;
        }
        BigDecimal pullFrom = line.settings.pullFromNewtons();
        for (int i = first; i <= last; i++) {
            boolean isSlack = line.isBelow(i, pullFrom) && line.isAbove(i, pullFrom.negate());
            if (!isSlack) {
                return false;
            }
        }
        BigDecimal allowed = line.ratedPull.multiply(new BigDecimal("0.01"));
        int greatest = line.count[line.greatest(first, last)];
        return line.compareDifference(greatest, line.leastCount(first, last), allowed) <= 0;
    }

    private boolean drifts(int reference, int stretch, long length) {
        if (line.isCurved()) {
            double mean = line.mean(stretch, (int) (stretch + length - 1));
            double wanted = line.mean(reference, (int) (reference + length - 1));
            return Math.abs(mean - wanted) > line.settings.driftNewtons().doubleValue();
        }
        BigDecimal difference =
                sum(stretch, length).subtract(sum(reference, length)).abs();
        return difference.compareTo(line.settings.driftNewtons().multiply(BigDecimal.valueOf(length))) > 0;
    }

    private BigDecimal sum(int first, long length) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int i = first; i < first + length; i++) {
            sum = sum.add(line.tension[i]);
        }
        return sum;
    }

    /** "a sample more than 0.2 · R above both neighbours"; "k − 1, k, k + 1 are all present; start and end are k." */
    private void oneSamplePeaks(List<Finding.Trouble> troubles) {
        BigDecimal height = line.ratedPull.multiply(new BigDecimal("0.2"));
        for (int k = 1; k + 1 < line.size; k++) {
            if (line.isStretch(k - 1, k + 1)
                    && line.compareDifference(line.count[k], line.count[k - 1], height) > 0
                    && line.compareDifference(line.count[k], line.count[k + 1], height) > 0) {
                troubles.add(new Finding.Trouble(TroubleKind.ONE_SAMPLE_PEAK, line.number[k], line.number[k]));
            }
        }
    }
}
