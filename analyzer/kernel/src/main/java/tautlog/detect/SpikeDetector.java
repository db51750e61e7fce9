package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds single samples far above both neighbours. Source: {@code FINDINGS.md}, Sensor trouble, {@code one-sample-peak}. */
final class SpikeDetector implements Detector {
    private final Relations relations;
    private final CountRing ring;
    private final FindingSink sink;
    private int neighbours;
    /** Bounds of the neighbours, which may lie coded: not too narrow. */
    private int leastBefore;

    private int greatestBefore;
    private int beforeLast;
    private int last;

    /** @param ring holds the samples before each run, and the run itself when it comes here */
    SpikeDetector(Thresholds thresholds, CountRing ring, FindingSink sink) {
        relations = thresholds.relations;
        this.ring = ring;
        this.sink = sink;
    }

    @Override
    public void run(Run run) {
        boolean isNeighbourLeft = neighbours > 0 && run.n == 1;
        if (mayHold(run)) {
            takeNeighbours(run);
            for (int k = 0; k < run.n; k++) {
                take(run.first + k, run.count(k));
            }
        }
        leastBefore = isNeighbourLeft ? Math.min(leastBefore, run.least) : run.least;
        greatestBefore = isNeighbourLeft ? Math.max(greatestBefore, run.greatest) : run.greatest;
        neighbours = Math.min(2, neighbours + run.n);
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        takeNeighbours(run);
        long low = relations.spikeFreeFrom(last);
        long high = relations.spikeFreeTo(last);
        if (neighbours < 2 || beforeLast < low || beforeLast > high) {
            quiet.never();
        }
        quiet.notAbove(high);
        quiet.notBelow(low);
    }

    /** The samples before {@code run}, as many of them as there are. */
    private void takeNeighbours(Run run) {
        long place = ring.placeOf(run.first);
        if (neighbours > 0) {
            last = ring.at(place - 1);
        }
        if (neighbours > 1) {
            beforeLast = ring.at(place - 2);
        }
    }

    private boolean mayHold(Run run) {
        return neighbours > 0
                ? relations.isSpike(Math.max(run.greatest, greatestBefore), Math.min(run.least, leastBefore))
                : relations.isSpike(run.greatest, run.least);
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
