package tautlog.detect;

import tautlog.detect.Finding.Pull;

/** A pull that is over, until what else it reports is known: its shocks, and what the shaft did. */
final class ClosedPull {
    final long start;
    final long end;
    final PullLoad load;
    private final boolean hasGap;
    private final boolean cutByGap;
    private final boolean cutByEnd;
    private long endTick;

    ClosedPull(long start, long end, long endTick, PullLoad load, boolean hasGap, boolean cutByGap, boolean cutByEnd) {
        this.start = start;
        this.end = end;
        this.endTick = endTick;
        this.load = load;
        this.hasGap = hasGap;
        this.cutByGap = cutByGap;
        this.cutByEnd = cutByEnd;
    }

    void setEndTick(long tick) {
        endTick = tick;
    }

    /** Tick of its last sample. */
    long endTick() {
        return endTick;
    }

    boolean holds(long number) {
        return number >= start && number <= end;
    }

    /** @param atLeastFrom from this count on a peak is only a lower bound */
    Pull finding(int atLeastFrom) {
        return new Pull(
                start,
                end,
                load.peak,
                load.sum,
                load.samples,
                load.limits.id,
                load.limits.assumed,
                load.shareCounts,
                load.overloads,
                load.shocks,
                held(),
                load.peak >= atLeastFrom,
                hasGap,
                cutByGap,
                cutByEnd,
                load.bandSamples(),
                load.winching,
                load.held,
                load.squares.total());
    }

    private Known held() {
        if (load.winching > 0) {
            return Known.NO;
        }
        return load.held == end - start + 1 ? Known.YES : Known.UNKNOWN;
    }
}
