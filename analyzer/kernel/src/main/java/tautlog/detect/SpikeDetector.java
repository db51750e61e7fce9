package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds single samples far above both neighbours. Source: {@code FINDINGS.md}, Sensor trouble, {@code one-sample-peak}. */
final class SpikeDetector implements Detector {
    private final long overSpike;
    private final FindingSink sink;
    private int neighbours;
    private int beforeLast;
    private int last;

    SpikeDetector(Thresholds thresholds, FindingSink sink) {
        overSpike = thresholds.overSpike;
        this.sink = sink;
    }

    @Override
    public void run(Run run) {
        if (mayHold(run)) {
            for (int k = 0; k < run.n; k++) {
                take(run.first + k, run.count(k));
            }
        } else {
            beforeLast = run.n > 1 ? run.count(run.n - 2) : last;
            last = run.lastCount();
            neighbours = Math.min(2, neighbours + run.n);
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (neighbours < 2 || Math.abs((long) last - beforeLast) > overSpike / 2) {
            quiet.never();
        }
        quiet.notAbove(last + overSpike / 2);
        quiet.notBelow(last - overSpike / 2);
    }

    private boolean mayHold(Run run) {
        long high = run.greatest;
        long low = run.least;
        if (neighbours > 0) {
            high = Math.max(high, last);
            low = Math.min(low, last);
        }
        if (neighbours > 1) {
            low = Math.min(low, beforeLast);
        }
        return high - low > overSpike;
    }

    private void take(long number, int count) {
        if (neighbours == 2 && (long) last - beforeLast > overSpike && (long) last - count > overSpike) {
            sink.finding(new Trouble(TroubleKind.ONE_SAMPLE_PEAK, number - 1, number - 1));
        }
        beforeLast = last;
        last = count;
        neighbours = Math.min(2, neighbours + 1);
    }

    @Override
    public void gap(Gap gap) {
        neighbours = 0;
    }

    @Override
    public void end() {
        neighbours = 0;
    }
}
