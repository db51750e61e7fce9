package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Finds jolts. Source: {@code FINDINGS.md}, Jolt.
 *
 * <p>No jolt opens in the peak's window of a shock, but whether a snap was a shock is known up to two seconds later. So when a jolt
 * would open in the window of an undecided snap, both readings go on side by side until the snap is decided.
 */
final class JoltDetector implements Detector {
    private record Window(long after, long through) {
        boolean holds(long number) {
            return number > after && number <= through;
        }
    }

    /** Samples that are looked at one by one when least and greatest do not say enough: so few that a steady rise says enough. */
    private static final int PIECE = 32;

    private final Thresholds thresholds;
    private final Relations relations;
    private final CountRing ring;
    private final FindingSink sink;
    private final SlidingExtreme leasts;
    private final RecentBounds bounds;
    private final Deque<Window> shocks = new ArrayDeque<>();
    private final JoltScan ifShock;
    private JoltScan scan;
    private boolean forked;
    private int forkedAt;
    private Window undecided = NEVER;

    private static final Window NEVER = new Window(Long.MAX_VALUE, Long.MIN_VALUE);

    /** @param ring holds the samples before each run, and the run itself when it comes here */
    JoltDetector(Thresholds thresholds, HookupLimits limits, CountRing ring, FindingSink sink) {
        this.thresholds = thresholds;
        relations = thresholds.relations;
        this.ring = ring;
        this.sink = sink;
        leasts = SlidingExtreme.least(ring, thresholds.joltWithin);
        bounds = new RecentBounds(thresholds.joltWithin);
        scan = new JoltScan(thresholds.atLeastFrom, limits);
        ifShock = new JoltScan(thresholds.atLeastFrom, limits);
    }

    /** The line snapped tight after sample {@code after}: no jolt opens through {@code through} if that was a shock. */
    void snapBegan(long after, long through) {
        undecided = new Window(after, through);
    }

    /** The last snap was a shock or not; its window is over after {@code through}. Comes before the samples after that. */
    void snapDecided(boolean shock, long through) {
        if (shock) {
            shocks.add(new Window(undecided.after, through));
            if (forked) {
                scan.copyFrom(ifShock);
            }
        }
        forked = false;
        undecided = NEVER;
    }

    @Override
    public void run(Run run) {
        boolean wasForked = forked;
        take(scan, run, 0);
        if (forked) {
            take(ifShock, run, wasForked ? 0 : forkedAt);
        } else {
            scan.tell(sink);
        }
        bounds.add(run);
        while (!shocks.isEmpty() && shocks.getFirst().through <= run.last()) {
            shocks.removeFirst();
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (scan.isOpen() || forked || bounds.isEmpty()) {
            quiet.never();
            return;
        }
        long low = bounds.least() - relations.joltMargin();
        if (low > thresholds.slackBelow) {
            quiet.notBelow(low);
        }
        quiet.notAbove(relations.joltsFrom(Math.max(thresholds.slackBelow, low)) - 1);
    }

    private void take(JoltScan reading, Run run, int from) {
        int k = reading.isOpen() ? reading.takeWindow(run, from) : from;
        while (k < run.n && mayOpen(run)) {
            k = seek(reading, run, k);
            if (reading.isOpen()) {
                k = reading.takeWindow(run, k);
            }
        }
    }

    /** A cheap bound: false when no sample of the run can open a jolt. */
    private boolean mayOpen(Run run) {
        return run.greatest >= leastThatOpens(run);
    }

    /** No count below this one opens a jolt: it rises from a tight sample, and none near is lower than the bounds. */
    private long leastThatOpens(Run run) {
        return relations.joltsFrom(Math.max(thresholds.slackBelow, Math.min(run.least, bounds.least())));
    }

    /** Looks from sample {@code k} on for one that opens a jolt; returns the sample after it, or the run's length. */
    private int seek(JoltScan reading, Run run, int k) {
        for (int from = k; from < run.n; from += PIECE) {
            int end = Math.min(run.n, from + PIECE);
            long least = leastThatOpens(run, from, end);
            if (run.greatest(from, end) >= least) {
                for (int i = from; i < end; i++) {
                    if (run.count(i) >= least && opens(reading, run, i)) {
                        return i + 1;
                    }
                }
            }
        }
        return run.n;
    }

    /** No count below this one opens a jolt at a sample from {@code from} to before {@code end} of the run. */
    private long leastThatOpens(Run run, int from, int end) {
        long place = ring.placeOf(run.first);
        long first = Math.max(place + from - thresholds.joltWithin, ring.placeOf(ring.stretchFirst()));
        long last = place + end - 2;
        return first > last
                ? Long.MAX_VALUE
                : relations.joltsFrom(Math.max(thresholds.slackBelow, ring.least(first, last)));
    }

    private boolean opens(JoltScan reading, Run run, int i) {
        long number = run.first + i;
        if (number - thresholds.joltWithin < ring.stretchFirst()) {
            return false;
        }
        long place = ring.placeOf(number);
        long leastPlace = leasts.place(place - thresholds.joltWithin, place - 1);
        int least = ring.at(leastPlace);
        boolean jerked = least >= thresholds.slackBelow && relations.isJolt(least, run.count(i));
        if (!jerked || isHidden(reading, number, i)) {
            return false;
        }
        reading.open(ring.numberOf(leastPlace), least, number, run.count(i), thresholds.joltWindow, run.limits);
        return true;
    }

    private boolean isHidden(JoltScan reading, long number, int i) {
        for (Window shock : shocks) {
            if (shock.holds(number)) {
                return true;
            }
        }
        if (!undecided.holds(number)) {
            return false;
        }
        if (reading == scan && !forked) {
            forked = true;
            forkedAt = i;
            ifShock.copyFrom(scan);
        }
        return reading == ifShock;
    }

    @Override
    public void gap(Gap gap) {
        bounds.clear();
        if (gap.isLong()) {
            end();
        }
    }

    @Override
    public void end() {
        scan.close();
        if (forked) {
            ifShock.close();
        } else {
            scan.tell(sink);
        }
    }
}
