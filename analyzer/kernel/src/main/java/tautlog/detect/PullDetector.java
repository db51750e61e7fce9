package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Finds pulls. Source: {@code FINDINGS.md}, Pull.
 *
 * <p>The end is known only afterwards: what comes after a sample at or above {@code pull_from} is kept apart until the next such
 * sample takes it in, or the pull closes without it. A closed pull waits until its shocks are decided and the shaft's readings
 * are known up to its end.
 */
final class PullDetector implements Detector {
    /** So few samples are looked at one by one. */
    private static final int FEW = 8;

    private final Thresholds thresholds;
    private final PullCycles cycles;
    private final FindingSink sink;
    private final Deque<ClosedPull> closed = new ArrayDeque<>();
    private PullLoad sure;
    private final PullLoad tail;
    private int opening;
    private boolean open;
    private long start;
    private long end;
    private long endTick;
    private int unloadedSamples;
    private boolean hasGap;
    private boolean gapSinceEnd;

    PullDetector(Thresholds thresholds, HookupLimits limits, FindingSink sink) {
        this.thresholds = thresholds;
        this.sink = sink;
        cycles = new PullCycles(thresholds.relations, sink);
        sure = new PullLoad(limits);
        tail = new PullLoad(limits);
    }

    @Override
    public void run(Run run) {
        if (run.least >= thresholds.pullFrom) {
            loaded(run);
        } else if (run.greatest >= thresholds.pullFrom) {
            each(run);
        } else if (open) {
            unloaded(run);
        } else {
            abandon();
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (!closed.isEmpty()) {
            quiet.never();
        } else if (open) {
            quiet.notAfter(run.first + thresholds.pullEndAfter - unloadedSamples - 2);
        }
    }

    /** True when a closed pull is not yet reported. */
    boolean areWaiting() {
        return !closed.isEmpty();
    }

    /** True when a pull is open, or may open with the next sample. */
    boolean areOpen() {
        return open || opening > 0;
    }

    private void loaded(Run run) {
        begin(run.first);
        takeTail();
        sure.add(run);
        cycles.run(run);
        end = run.last();
        confirm(run.n);
    }

    private void unloaded(Run run) {
        boolean mayClose = run.least < thresholds.pullHalf;
        if (mayClose && (run.greatest >= thresholds.pullHalf || unloadedSamples + run.n >= thresholds.pullEndAfter)) {
            each(run);
            return;
        }
        unload(run, mayClose);
    }

    private void unload(Run run, boolean mayClose) {
        cycles.mark();
        cycles.run(run);
        tail.add(run);
        unloadedSamples = mayClose ? unloadedSamples + run.n : 0;
    }

    /** What lies on one side of pull_from and of half of it is taken together. */
    private void each(Run run) {
        for (int k = 0; k < run.n; ) {
            int end = sameSide(run, k);
            if (end - k > FEW) {
                takeTogether(run, k, end);
            } else {
                end = k + 1;
                takeOne(run, k, run.count(k));
            }
            k = end;
        }
    }

    /** Where the samples from {@code k} on that lie on one side end; with the one that closes the pull begins another. */
    private int sameSide(Run run, int k) {
        int[] counts = run.open();
        int from = run.at() + k;
        int low = lowEnd(counts[from]);
        int high = highEnd(counts[from]);
        int most = open && high == thresholds.pullHalf ? thresholds.pullEndAfter - unloadedSamples - 1 : run.n;
        int end = from + Math.min(run.n - k, most);
        int i = from;
        while (i < end && counts[i] >= low && counts[i] < high) {
            i++;
        }
        return i - run.at();
    }

    private int lowEnd(int count) {
        return count >= thresholds.pullFrom
                ? thresholds.pullFrom
                : count >= thresholds.pullHalf ? thresholds.pullHalf : Integer.MIN_VALUE;
    }

    private int highEnd(int count) {
        return count < thresholds.pullHalf
                ? thresholds.pullHalf
                : count < thresholds.pullFrom ? thresholds.pullFrom : Integer.MAX_VALUE;
    }

    private void takeTogether(Run run, int k, int end) {
        int count = run.count(k);
        if (count >= thresholds.pullFrom) {
            loaded(run.part(k, end));
        } else if (open) {
            unload(run.part(k, end), count < thresholds.pullHalf);
        } else {
            abandon();
        }
    }

    private void takeOne(Run run, int k, int count) {
        if (count >= thresholds.pullFrom) {
            loadedSample(run, k, count);
        } else if (open) {
            unloadedSample(run, count);
        } else {
            abandon();
        }
    }

    private void loadedSample(Run run, int k, int count) {
        begin(run.first + k);
        takeTail();
        sure.add(count, run.limits);
        cycles.sample(count);
        end = run.first + k;
        confirm(1);
    }

    private void unloadedSample(Run run, int count) {
        cycles.mark();
        cycles.sample(count);
        tail.add(count, run.limits);
        unloadedSamples = count < thresholds.pullHalf ? unloadedSamples + 1 : 0;
        if (unloadedSamples >= thresholds.pullEndAfter) {
            hasGap |= gapSinceEnd;
            close(false, false);
        }
    }

    private void begin(long number) {
        if (!open && opening == 0) {
            start = number;
            cycles.begin();
        }
    }

    private void takeTail() {
        if (open) {
            sure.take(tail);
            unloadedSamples = 0;
            hasGap |= gapSinceEnd;
            gapSinceEnd = false;
        }
        cycles.keep();
    }

    private void confirm(int samples) {
        if (!open) {
            opening += samples;
            open = opening >= thresholds.pullFor;
            if (open) {
                opening = 0;
                cycles.confirm();
            }
        }
    }

    private void abandon() {
        if (opening > 0) {
            opening = 0;
            sure.clear();
        }
    }

    @Override
    public void gap(Gap gap) {
        abandon();
        if (open && gap.isLong()) {
            close(true, false);
        } else if (open) {
            gapSinceEnd = true;
        }
    }

    @Override
    public void end() {
        abandon();
        if (open) {
            close(false, true);
        }
    }

    private void close(boolean cutByGap, boolean cutByEnd) {
        cycles.finish();
        closed.add(new ClosedPull(start, end, endTick, sure, hasGap, cutByGap, cutByEnd));
        sure = new PullLoad(sure.limits);
        tail.clear();
        open = false;
        unloadedSamples = 0;
        hasGap = false;
        gapSinceEnd = false;
    }

    /** An overload began at {@code number}; comes when the run that holds it has been taken here. */
    void overloadAt(long number) {
        PullLoad load = loadAt(number);
        if (load != null) {
            load.overloads++;
        }
    }

    /** A shock has its peak at {@code number}. */
    void shockAt(long number) {
        PullLoad load = loadAt(number);
        if (load != null) {
            load.shocks++;
        }
    }

    private @Nullable PullLoad loadAt(long number) {
        for (ClosedPull pull : closed) {
            if (pull.holds(number)) {
                return pull.load;
            }
        }
        if ((!open && opening == 0) || number < start) {
            return null;
        }
        return number <= end ? sure : tail;
    }

    /** A shaft reading speaks for the numbers from {@code first} to {@code last}, all of them taken here. */
    void shaftSpeaks(long first, long last, boolean turning) {
        if (!closed.isEmpty()) {
            for (ClosedPull pull : closed) {
                credit(pull.load, Math.max(first, pull.start), Math.min(last, pull.end), turning);
            }
        }
        if (open || opening > 0) {
            credit(sure, Math.max(first, start), Math.min(last, end), turning);
            credit(tail, Math.max(first, end + 1), last, turning);
        }
    }

    private static void credit(PullLoad load, long first, long last, boolean turning) {
        if (first <= last) {
            load.speaks(last - first + 1, turning);
        }
    }

    /** A frame has been taken: notes the ticks of ends that lie in it. */
    void frameTaken(long frameFirst, Frames frames) {
        if ((open || opening > 0) && end >= frameFirst) {
            endTick = frames.tickOf(end);
        }
        if (!closed.isEmpty()) {
            for (ClosedPull pull : closed) {
                if (pull.end >= frameFirst) {
                    pull.setEndTick(frames.tickOf(pull.end));
                }
            }
        }
    }

    /** Whether {@code number}, a sample at or above {@code pull_from} taken here, lies in a pull. */
    Known holds(long number) {
        if (closedPullAt(number) != null || (open && number >= start)) {
            return Known.YES;
        }
        return opening > 0 && number >= start ? Known.UNKNOWN : Known.NO;
    }

    /** The closed pull, not yet reported, that holds {@code number}. */
    @Nullable
    ClosedPull closedPullAt(long number) {
        for (ClosedPull pull : closed) {
            if (pull.holds(number)) {
                return pull;
            }
        }
        return null;
    }

    /** The last sample at or above {@code pull_from} of the pull that is open. */
    long endSoFar() {
        return end;
    }

    /**
     * Reports the closed pulls that can change no more.
     *
     * @param shocksKnownBelow a shock not yet decided has its peak here or later
     * @param shaftKnownThrough readings to come sit at this number or later
     */
    void report(long shocksKnownBelow, long shaftKnownThrough) {
        while (!closed.isEmpty()
                && closed.getFirst().end < shocksKnownBelow
                && closed.getFirst().end < shaftKnownThrough) {
            sink.finding(closed.removeFirst().finding(thresholds.atLeastFrom));
        }
    }
}
