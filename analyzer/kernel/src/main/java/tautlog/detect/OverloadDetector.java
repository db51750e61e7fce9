package tautlog.detect;

import tautlog.detect.Finding.Overload;

/**
 * Finds overloads. Source: {@code FINDINGS.md}, Overload.
 *
 * <p>Tells the pulls of each at its first sample, the sink when it is over.
 */
final class OverloadDetector implements Detector {
    private final Thresholds thresholds;
    private final PullDetector pulls;
    private final FindingSink sink;
    private boolean open;
    private HookupLimits limits;
    private long start;
    private long end;
    private long above;
    private int peak;
    private int clearSamples;
    private boolean hasGap;
    private boolean gapSinceEnd;

    OverloadDetector(Thresholds thresholds, HookupLimits limits, PullDetector pulls, FindingSink sink) {
        this.thresholds = thresholds;
        this.limits = limits;
        this.pulls = pulls;
        this.sink = sink;
    }

    @Override
    public void run(Run run) {
        if (run.limits != limits) {
            changeTo(run.limits);
        }
        if (run.least > limits.limit) {
            above(run.first, run.last(), run.n, run.greatest);
        } else if (run.greatest > limits.limit) {
            each(run);
        } else if (open) {
            below(run);
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (run.limits != limits) {
            quiet.never();
        } else if (open) {
            quiet.notAfter(run.first + thresholds.overloadQuiet - clearSamples - 2);
        } else {
            quiet.notAbove(limits.limit);
        }
    }

    private void changeTo(HookupLimits other) {
        if (open && !other.isSameHookup(limits)) {
            close(false, false);
        }
        if (!open) {
            limits = other;
        }
    }

    private void below(Run run) {
        if (run.greatest <= limits.clear && clearSamples + run.n < thresholds.overloadQuiet) {
            clearSamples += run.n;
        } else {
            each(run);
        }
    }

    private void each(Run run) {
        int[] counts = run.open();
        int at = run.at();
        for (int k = 0; k < run.n; k++) {
            int count = counts[at + k];
            if (count > limits.limit) {
                above(run.first + k, run.first + k, 1, count);
            } else if (open) {
                clearSamples = count <= limits.clear ? clearSamples + 1 : 0;
                if (clearSamples >= thresholds.overloadQuiet) {
                    hasGap |= gapSinceEnd;
                    close(false, false);
                    limits = run.limits;
                }
            }
        }
    }

    private void above(long first, long last, int samples, int greatest) {
        if (!open) {
            open = true;
            start = first;
            above = 0;
            peak = greatest;
            hasGap = false;
            gapSinceEnd = false;
            pulls.overloadAt(first);
        }
        hasGap |= gapSinceEnd;
        gapSinceEnd = false;
        end = last;
        above += samples;
        peak = Math.max(peak, greatest);
        clearSamples = 0;
    }

    @Override
    public void gap(Gap gap) {
        if (open && gap.isLong()) {
            close(true, false);
        } else if (open) {
            gapSinceEnd = true;
        }
    }

    @Override
    public void end() {
        if (open) {
            close(false, true);
        }
    }

    private void close(boolean cutByGap, boolean cutByEnd) {
        open = false;
        clearSamples = 0;
        sink.finding(new Overload(
                start,
                end,
                above,
                peak,
                limits.id,
                limits.assumed,
                peak >= thresholds.atLeastFrom,
                hasGap,
                cutByGap,
                cutByEnd));
    }
}
