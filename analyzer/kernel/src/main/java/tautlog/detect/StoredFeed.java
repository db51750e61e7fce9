package tautlog.detect;

import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** Fills runs with stored counts, which go into the ring as they are, and gives them. */
final class StoredFeed {
    private final CountRing ring;
    private final Run run;
    private final LimitsByHookup hookups;
    private final SecondsMaker seconds;
    private final Runnable give;

    /** @param give gives {@code run} to the detectors */
    StoredFeed(CountRing ring, Run run, LimitsByHookup hookups, SecondsMaker seconds, Runnable give) {
        this.ring = ring;
        this.run = run;
        this.hookups = hookups;
        this.seconds = seconds;
        this.give = give;
    }

    /** Gives the counts from sample {@code number} on: as one run, unless a second, a hookup or the ring ends in it. */
    void run(long number, StoredCounts counts) {
        int n = counts.size();
        for (int k = 0; k < n; ) {
            int fitting = ring.cut(seconds.cut(number + k, hookups.cut(number + k, n - k)));
            run.begin(number + k, hookups.inForce());
            join(counts.part(k, fitting));
            give.run();
            k += fitting;
        }
    }

    /** Gives a passage under one hookup, nobody asking for seconds: run by run, or as one run, two where the ring begins anew. */
    void passage(Passage passage, boolean asOne) {
        long number = passage.first();
        int skip = 0;
        for (int i = 0; i < passage.runs(); ) {
            run.begin(number, hookups.inForce());
            boolean fits = true;
            while (fits && i < passage.runs()) {
                StoredCounts counts = passage.run(i);
                int left = counts.size() - skip;
                int fitting = ring.cut(left);
                join(counts.part(skip, fitting));
                number += fitting;
                boolean isWhole = fitting == left;
                skip = isWhole ? 0 : skip + fitting;
                i += isWhole ? 1 : 0;
                fits = asOne && ring.next() > 0;
            }
            give.run();
        }
    }

    private void join(StoredCounts counts) {
        ring.append(counts);
        run.add(counts);
    }
}
