package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/**
 * Watches the zero of the slack line: {@code zero-drift} and {@code zero-unproven}. Source: {@code FINDINGS.md}, Sensor trouble.
 *
 * <p>Stretches of 10 s are compared by their sums of counts (and of squares, under a curve), so their order cannot matter. Most are
 * slack, or not, by the bounds of their runs alone, and so near to the first that its sum need not be worked out.
 */
final class ZeroDetector implements Detector {
    private final Thresholds thresholds;
    private final CountRing ring;
    private final FindingSink sink;
    private final int length;
    private boolean began;
    private long first;
    private long last;
    /** The stretch that goes on: the number that it needs next, and the one after its last. */
    private long next = Long.MAX_VALUE;

    private long end;
    /** Of its runs that lie in it whole. */
    private final Bounds whole = new Bounds();
    /** Of its runs and those that it shares with its neighbours: perhaps too wide. */
    private final Bounds touched = new Bounds();

    private int sharedAtStart;
    private int sharedAtEnd;

    private boolean proven;
    private final SlackSums reference = new SlackSums();
    private final SlackSums present = new SlackSums();
    private boolean excursion;
    private long excursionFirst;
    private long excursionLast;

    /** @param ring holds the samples of the last two stretches */
    ZeroDetector(Thresholds thresholds, CountRing ring, FindingSink sink) {
        this.thresholds = thresholds;
        this.ring = ring;
        this.sink = sink;
        length = thresholds.zeroStretch;
    }

    private static final class Bounds {
        int least;
        int greatest;

        void clear() {
            least = Integer.MAX_VALUE;
            greatest = Integer.MIN_VALUE;
        }

        void add(Bounds other) {
            add(other.least, other.greatest);
        }

        void add(int low, int high) {
            least = Math.min(least, low);
            greatest = Math.max(greatest, high);
        }
    }

    @Override
    public void run(Run run) {
        if (!began) {
            began = true;
            first = run.first;
        }
        last = run.last();
        for (long number = run.first; number <= last; number = Math.min(end, last + 1)) {
            if (number >= end) {
                beginStretchOf(number);
            }
            take(number, Math.min(end, last + 1), run);
        }
    }

    private void beginStretchOf(long number) {
        next = first + (number - first) / length * length;
        end = next + length;
        whole.clear();
        touched.clear();
        sharedAtStart = 0;
        sharedAtEnd = 0;
    }

    /** Takes the samples from {@code from} to before {@code to}; one after a missing one is left out: nothing then completes the stretch. */
    private void take(long from, long to, Run run) {
        if (from != next) {
            return;
        }
        int n = (int) (to - from);
        next = to;
        touched.add(run.least, run.greatest);
        if (n == run.n) {
            whole.add(run.least, run.greatest);
        } else if (next - n == end - length) {
            sharedAtStart = n;
        } else {
            sharedAtEnd = n;
        }
        if (next == end && isSlack(whole)) {
            long lastPlace = ring.placeOf(end - 1);
            if (isSlack(touched) || isSlackToTheSample(lastPlace)) {
                compare(lastPlace);
            }
        }
    }

    private boolean isSlack(Bounds bounds) {
        return thresholds.areStillSlack(bounds.least, bounds.greatest);
    }

    /** Looks into the runs that it shares. */
    private boolean isSlackToTheSample(long lastPlace) {
        long start = lastPlace - length + 1;
        touched.clear();
        touched.add(whole);
        add(start, start + sharedAtStart);
        add(lastPlace - sharedAtEnd + 1, lastPlace + 1);
        return isSlack(touched);
    }

    private void add(long from, long to) {
        if (from < to) {
            touched.add(ring.least(from, to - 1), ring.greatest(from, to - 1));
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        quiet.notAfter(end - 2);
    }

    private void compare(long lastPlace) {
        if (!proven) {
            proven = true;
            sum(reference, lastPlace);
        } else if (isDrift(lastPlace)) {
            if (!excursion) {
                excursion = true;
                excursionFirst = end - length;
            }
            excursionLast = end - 1;
        } else {
            tellExcursion();
        }
    }

    private boolean isDrift(long lastPlace) {
        if (!thresholds.relations.areCurved() && !isDriftOf(touched.least) && !isDriftOf(touched.greatest)) {
            return false;
        }
        sum(present, lastPlace);
        return present.isDrift(reference, thresholds.relations);
    }

    private void sum(SlackSums sums, long lastPlace) {
        sums.of(ring, lastPlace - length + 1, lastPlace, thresholds.relations.areCurved());
    }

    /** Whether a stretch of this count alone had drifted. */
    private boolean isDriftOf(int count) {
        present.of(count, length);
        return present.isDrift(reference, thresholds.relations);
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
