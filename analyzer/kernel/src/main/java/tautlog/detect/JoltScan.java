package tautlog.detect;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding.Jolt;

/** One way to read the samples for jolts: the state between two runs, and the jolts that it found and did not yet tell. */
final class JoltScan {
    private final int atLeastFrom;
    private final List<Jolt> found = new ArrayList<>();
    private boolean open;
    private long start;
    private int least;
    private long peakNumber;
    private int peak;
    private long windowEnd;
    private HookupLimits limits;

    /** @param atLeastFrom from this count on a peak is only a lower bound */
    JoltScan(int atLeastFrom, HookupLimits limits) {
        this.atLeastFrom = atLeastFrom;
        this.limits = limits;
    }

    void copyFrom(JoltScan other) {
        open = other.open;
        start = other.start;
        least = other.least;
        peakNumber = other.peakNumber;
        peak = other.peak;
        windowEnd = other.windowEnd;
        limits = other.limits;
        found.clear();
        found.addAll(other.found);
    }

    boolean isOpen() {
        return open;
    }

    void open(long startNumber, int leastCount, long number, int count, int window, HookupLimits hookup) {
        open = true;
        start = startNumber;
        least = leastCount;
        peakNumber = number;
        peak = count;
        windowEnd = number + window;
        limits = hookup;
    }

    /** Takes the open jolt's part of the run from sample {@code k} on; returns the first sample after it. */
    int takeWindow(Run run, int k) {
        int end = (int) Math.min(run.n, windowEnd - run.first + 1);
        if (run.greatest > peak) {
            for (int i = k; i < end; i++) {
                if (run.count(i) > peak) {
                    peak = run.count(i);
                    peakNumber = run.first + i;
                    limits = run.limits;
                }
            }
        }
        if (run.last() >= windowEnd) {
            close();
        }
        return Math.max(k, end);
    }

    void close() {
        if (open) {
            open = false;
            found.add(new Jolt(start, least, peakNumber, peak, limits.id, peak >= atLeastFrom));
        }
    }

    void tell(FindingSink sink) {
        if (!found.isEmpty()) {
            found.forEach(sink::finding);
            found.clear();
        }
    }
}
