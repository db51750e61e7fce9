package tautlog.detect;

import java.util.Map;
import java.util.TreeMap;

/** Adds up what is told, so that nothing can be left out, and counts findings by kind. */
final class BenchSink implements FindingSink {
    private final boolean takesSeconds;
    private final Map<String, Integer> found = new TreeMap<>();
    long told;

    BenchSink(boolean takesSeconds) {
        this.takesSeconds = takesSeconds;
    }

    /** How many findings of this kind were told. */
    int found(String kind) {
        return found.getOrDefault(kind, 0);
    }

    @Override
    public void finding(Finding finding) {
        told += finding.startNumber();
        found.merge(finding.kind(), 1, Integer::sum);
    }

    @Override
    public void second(Second second) {
        told += second.countSum();
    }

    @Override
    public boolean takesSeconds() {
        return takesSeconds;
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        told += rangeCounts;
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        told += tick;
    }
}
