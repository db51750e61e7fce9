package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds single samples far above both neighbours. Source: {@code FINDINGS.md}, Sensor trouble, {@code one-sample-peak}. */
final class SpikeDetector implements Detector {
    private final Relations relations;
    private final FindingSink sink;
    private int neighbours;
    private int beforeLast;
    private int last;

    SpikeDetector(Thresholds thresholds, FindingSink sink) {
        relations = thresholds.relations;
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
        long low = relations.spikeFreeFrom(last);
        long high = relations.spikeFreeTo(last);
        if (neighbours < 2 || beforeLast < low || beforeLast > high) {
            quiet.never();
        }
        quiet.notAbove(high);
        quiet.notBelow(low);
    }

    private boolean mayHold(Run run) {
        int high = run.greatest;
        int low = run.least;
        if (neighbours > 0) {
            high = Math.max(high, last);
            low = Math.min(low, last);
        }
        if (neighbours > 1) {
            low = Math.min(low, beforeLast);
        }
        return relations.isSpike(high, low);
    }

    private void take(long number, int count) {
        if (neighbours == 2 && relations.isSpike(last, beforeLast) && relations.isSpike(last, count)) {
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
