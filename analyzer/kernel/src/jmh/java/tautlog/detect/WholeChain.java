package tautlog.detect;

import tautlog.fixtures.Rigs;
import tautlog.recording.CodedTrace;
import tautlog.rig.Rig;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** Detectors, and beside them the greatest count and a histogram of 64 bins of 512 counts. */
final class WholeChain implements CodedTrace.Reader {
    private static final Rig RIG = Rigs.withLimit("12800", "8000");
    private static final int BINS = 64;
    private static final int BIN_BITS = 9;

    final long[] bins = new long[BINS];
    final BenchSink sink;
    private final CodedTrace.Reader detectors;
    private final Runnable end;
    private final int[] counts = new int[StoredCounts.MOST];
    int greatest = Integer.MIN_VALUE;

    private WholeChain(CodedTrace.Reader detectors, Runnable end, BenchSink sink) {
        this.detectors = detectors;
        this.end = end;
        this.sink = sink;
    }

    /** Which detectors. */
    enum Of {
        /** All, as a replay has them. */
        ALL {
            @Override
            WholeChain chain() {
                Instrument withoutShaft = new Instrument("BENCH", 1, 0, 1, 1_000_000, 500_000, 8_388_607, 0);
                ChainFeed feed = new ChainFeed(withoutShaft, RIG, ChainFeed.Shaft.SILENT);
                return new WholeChain(feed, feed::end, feed.sink);
            }
        },
        /** Those that {@code chain.py} has: pulls with rainflow, overloads, shocks. */
        ALIKE {
            @Override
            WholeChain chain() {
                DetectorFeed feed = new DetectorFeed(RIG, DetectorFeed::pullsOverloadsAndShocks);
                return new WholeChain(feed, feed::end, feed.sink);
            }
        };

        abstract WholeChain chain();
    }

    @Override
    public void frame(long number, long tick, int flags, int n) {
        detectors.frame(number, tick, flags, n);
    }

    @Override
    public boolean passage(Passage passage) {
        if (!detectors.passage(passage)) {
            return false;
        }
        int bin = bin(passage.least());
        if (bin == bin(passage.greatest())) {
            greatest = Math.max(greatest, passage.greatest());
            bins[bin] += passage.samples();
        } else {
            for (int i = 0; i < passage.runs(); i++) {
                sort(passage.run(i));
            }
        }
        return true;
    }

    @Override
    public void run(long number, StoredCounts stored) {
        sort(stored);
        detectors.run(number, stored);
    }

    private void sort(StoredCounts stored) {
        greatest = Math.max(greatest, stored.greatest());
        int bin = bin(stored.least());
        if (bin == bin(stored.greatest())) {
            bins[bin] += stored.size();
        } else {
            stored.copyTo(counts, 0);
            for (int i = 0; i < stored.size(); i++) {
                bins[bin(counts[i])]++;
            }
        }
    }

    private static int bin(int count) {
        return Math.max(0, Math.min(BINS - 1, count >> BIN_BITS));
    }

    void end() {
        end.run();
    }
}
