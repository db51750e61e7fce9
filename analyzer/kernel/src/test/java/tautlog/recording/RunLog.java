package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.StoredCounts;

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
    public void run(long number, int flags, StoredCounts stored) {
        int n = stored.size();
        assertTrue(number + n <= announced, "a frame was not announced");
        int[] counts = new int[n];
        stored.copyTo(counts, 0);
        for (int i = 0; i < n; i++) {
            samples.add((number + i) + " f" + flags + " " + counts[i]);
        }
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        RunSink.super.tension(number, tick, flags, counts, from, n);
    }
}
