package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.ForwardedEvidence;

/** Writes down a replay by runs: each sample by itself, every other call as {@link EvidenceLog} does. */
final class RunLog extends ForwardedEvidence implements RunSink {
    final List<String> samples = new ArrayList<>();
    final EvidenceLog log;
    private long announced = Long.MIN_VALUE;

    RunLog() {
        this(new EvidenceLog());
    }

    private RunLog(EvidenceLog log) {
        super(log);
        this.log = log;
    }

    @Override
    public void frame(long number, long tick, int flags, int n) {
        announced = number + n;
    }

    @Override
    public void run(SampleBlock block, int run, int skip, int n) {
        int from = block.runFrom(run) + skip;
        long number = block.runNumber(run) + skip;
        assertTrue(number + n <= announced, "a frame was not announced");
        int[] counts = block.counts(run);
        for (int i = 0; i < n; i++) {
            samples.add((number + i) + " f" + block.runFlags(run) + " " + counts[from + i]);
        }
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        RunSink.super.tension(number, tick, flags, counts, from, n);
    }
}
