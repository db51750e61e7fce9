package tautlog.detect;

import tautlog.detect.Finding.Shock;

/**
 * Finds shocks. Source: {@code FINDINGS.md}, Shock.
 *
 * <p>At most one snap is undecided at a time: the slack run that must come before the next one decides the one before. Whether a
 * snap was a shock is told to the pulls and the jolts as soon as it is decided.
 */
final class ShockDetector implements Detector {
    private final Thresholds thresholds;
    private final PullDetector pulls;
    private final JoltDetector jolts;
    private final FindingSink sink;
    private final Snap snap;
    private boolean undecided;
    private long slackFirst;
    private long slackLength;

    ShockDetector(
            Thresholds thresholds, HookupLimits limits, PullDetector pulls, JoltDetector jolts, FindingSink sink) {
        this.thresholds = thresholds;
        this.pulls = pulls;
        this.jolts = jolts;
        this.sink = sink;
        snap = new Snap(thresholds, limits);
    }

    @Override
    public void run(Run run) {
        boolean slack = run.greatest < thresholds.slackBelow;
        boolean tight = isTight(run);
        if (undecided) {
            if (tight && snap.takeAll(run)) {
                slackLength = 0;
            } else {
                each(run);
            }
        } else if (!(slack || tight)) {
            each(run);
        } else if (slack) {
            slackens(run.first, run.n);
        } else {
            slackLength = 0;
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (undecided) {
            quiet.notBelow(thresholds.slackBelow);
            snap.narrow(quiet, run.first);
        } else if (slackLength > 0) {
            quiet.notAbove(thresholds.slackBelow - 1L);
        } else {
            quiet.notBelow(thresholds.slackBelow);
        }
        if (undecided && slackLength > 0) {
            quiet.never();
        }
    }

    /** True when the line snapped tight, and whether it was a shock is not known yet. */
    boolean isUndecided() {
        return undecided;
    }

    /** True when the line is tight throughout, and was not slack before for so long that it snaps. */
    private boolean isTight(Run run) {
        return run.least >= thresholds.slackBelow && slackLength < thresholds.slackFor;
    }

    private void each(Run run) {
        int[] counts = run.open();
        int at = run.at();
        for (int k = 0; k < run.n; ) {
            int taken = undecided ? 1 : sameSide(counts, at + k, at + run.n);
            int count = counts[at + k];
            if (count < thresholds.slackBelow) {
                slackens(run.first + k, taken);
            } else {
                tightens(run.first + k);
            }
            if (undecided) {
                snap.sample(run.first + k, count, run.limits);
                decideIfKnown();
                taken = 1;
            }
            k += taken;
        }
    }

    /** How many samples, from the first on, lie on the same side of where the line is slack. */
    private int sameSide(int[] counts, int from, int end) {
        boolean slack = counts[from] < thresholds.slackBelow;
        int i = from + 1;
        while (i < end && counts[i] < thresholds.slackBelow == slack) {
            i++;
        }
        return i - from;
    }

    private void slackens(long number, int samples) {
        if (slackLength == 0) {
            slackFirst = number;
        }
        slackLength += samples;
        if (undecided && slackLength >= thresholds.slackFor) {
            boolean cutsSettling = slackFirst <= snap.settleThrough();
            if (cutsSettling) {
                snap.cutSettlingAt(slackFirst);
            }
            decide(cutsSettling ? snap.hasEnoughSettling() : snap.hasSettling(), true, slackFirst - 1);
        }
    }

    private void tightens(long number) {
        if (slackLength >= thresholds.slackFor) {
            undecided = true;
            snap.begin(number - 1, slackLength);
            jolts.snapBegan(snap.start, snap.windowEnd());
        }
        slackLength = 0;
    }

    private void decideIfKnown() {
        if (!snap.isWindowOver()) {
            return;
        }
        boolean slackMayCutIt = slackLength > 0 && slackFirst <= snap.settleThrough();
        if (!snap.isHighEnough() || (snap.isReached() && !slackMayCutIt)) {
            decide(snap.hasSettling(), true, snap.windowEnd());
        }
    }

    /** @param unknownCounts whether a peak with an unknown level is a shock */
    private void decide(boolean settledKnown, boolean unknownCounts, long windowEnd) {
        undecided = false;
        boolean high = snap.isHighEnough();
        long settledTwice = high && settledKnown ? snap.settledTwice() : 0;
        boolean shock =
                high && (settledKnown ? thresholds.relations.isShockAgainst(snap.peak, settledTwice) : unknownCounts);
        jolts.snapDecided(shock, Math.min(windowEnd, snap.windowEnd()));
        if (shock) {
            pulls.shockAt(snap.peakNumber);
            sink.finding(new Shock(
                    snap.start,
                    snap.slackSamples,
                    snap.peakNumber,
                    snap.peak,
                    settledKnown,
                    settledTwice,
                    snap.limits.id,
                    snap.peak >= thresholds.atLeastFrom,
                    snap.hasGap()));
        }
    }

    @Override
    public void gap(Gap gap) {
        if (undecided && gap.isLong()) {
            cut(gap.first() - 1);
        } else if (undecided) {
            snap.shortGap(gap);
        }
        slackLength = 0;
    }

    @Override
    public void end() {
        if (undecided) {
            cut(Long.MAX_VALUE);
        }
    }

    private void cut(long windowEnd) {
        boolean reached = snap.isReached();
        decide(reached ? snap.hasSettling() : snap.hasEnoughSettling(), reached, windowEnd);
    }

    /** A shock that is not yet decided has its peak here or later. */
    long shocksKnownBelow() {
        return undecided ? snap.start + 1 : Long.MAX_VALUE;
    }
}
