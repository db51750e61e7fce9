package tautlog.detect;

/**
 * A line that has snapped tight, until it is known whether that was a shock: the peak of its window, and the level it settles to.
 *
 * <p>One object, begun anew for every snap. Source: {@code FINDINGS.md}, Shock.
 */
final class Snap {
    /** With fewer samples a settling that was cut short says nothing. */
    private static final int LEAST_SETTLING = 20;

    private final Thresholds thresholds;
    private final int[] settling;
    private int settled;
    private long lastNumber;
    private boolean gapInWindow;
    private boolean gapInSettling;
    long start;
    long slackSamples;
    long peakNumber;
    int peak;
    HookupLimits limits;

    Snap(Thresholds thresholds, HookupLimits limits) {
        this.thresholds = thresholds;
        this.limits = limits;
        settling = new int[thresholds.settleEnd - thresholds.settleAfter];
    }

    void begin(long lastSlack, long slack) {
        start = lastSlack;
        slackSamples = slack;
        peak = Integer.MIN_VALUE;
        gapInWindow = false;
        restartSettling();
    }

    private void restartSettling() {
        settled = 0;
        gapInSettling = false;
    }

    void sample(long number, int count, HookupLimits hookup) {
        lastNumber = number;
        if (number <= windowEnd() && count > peak) {
            peak = count;
            peakNumber = number;
            limits = hookup;
            restartSettling();
        } else if (number > settleFrom() && number <= settleThrough()) {
            settling[settled++] = count;
        }
    }

    /** True when the run has no new peak and nothing can be decided in it. For a run in which the line is tight. */
    boolean isUnmovedBy(Run run) {
        long last = run.last();
        boolean peaks = run.first <= windowEnd() && run.greatest > peak;
        boolean decides = last >= settleThrough() || (last >= windowEnd() && !isHighEnough());
        return !(peaks || decides);
    }

    /** Narrows {@code quiet} to the runs that leave it unmoved; {@code next} is the number of the first sample of such a run. */
    void narrow(Quiet quiet, long next) {
        if (next <= windowEnd()) {
            quiet.notAbove(peak);
        }
        quiet.notAfter((isHighEnough() ? settleThrough() : Math.min(windowEnd(), settleThrough())) - 1);
    }

    /**
     * Takes the whole run if {@link #isUnmovedBy} it, or if it has a new peak and the window goes on behind it; else takes nothing and
     * returns false.
     */
    boolean takeAll(Run run) {
        if (run.last() < windowEnd() && run.greatest > peak) {
            peak = run.greatest;
            peakNumber = run.first + run.indexOf(peak);
            limits = run.limits;
            restartSettling();
        } else if (!isUnmovedBy(run)) {
            return false;
        }
        int skip = (int) Math.min(run.n, Math.max(0, settleFrom() + 1 - run.first));
        int end = (int) Math.min(run.n, settleThrough() + 1 - run.first);
        if (skip < end) {
            run.copyTo(skip, end, settling, settled);
            settled += end - skip;
        }
        lastNumber = run.last();
        return true;
    }

    void shortGap(Gap gap) {
        gapInWindow |= gap.touches(start, windowEnd());
        gapInSettling |= gap.touches(settleFrom(), settleThrough());
    }

    /** Last number of the peak's window, not cut. */
    long windowEnd() {
        return start + thresholds.shockWindow;
    }

    long settleThrough() {
        return peakNumber + thresholds.settleEnd;
    }

    private long settleFrom() {
        return peakNumber + thresholds.settleAfter;
    }

    boolean isWindowOver() {
        return lastNumber >= windowEnd();
    }

    /** True when the whole settling has been seen. */
    boolean isReached() {
        return lastNumber >= settleThrough();
    }

    boolean isHighEnough() {
        return peak >= thresholds.shockFrom;
    }

    /** Leaves out of the settling the samples from {@code number} on, which lie in one stretch. */
    void cutSettlingAt(long number) {
        long first = Math.max(number, settleFrom() + 1);
        long last = Math.min(lastNumber, settleThrough());
        settled -= (int) Math.max(0, last - first + 1);
    }

    boolean hasEnoughSettling() {
        return settled >= LEAST_SETTLING;
    }

    boolean hasSettling() {
        return settled > 0;
    }

    boolean hasGap() {
        return gapInWindow || gapInSettling;
    }

    /** Twice the median of the settling; puts it in another order, so nothing can be added afterwards. */
    long settledTwice() {
        int lower = Selection.select(settling, settled, (settled - 1) / 2);
        if (settled % 2 == 1) {
            return 2L * lower;
        }
        int upper = Integer.MAX_VALUE;
        for (int i = settled / 2; i < settled; i++) {
            upper = Math.min(upper, settling[i]);
        }
        return (long) lower + upper;
    }
}
