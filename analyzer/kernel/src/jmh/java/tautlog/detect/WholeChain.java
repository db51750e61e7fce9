package tautlog.detect;

import tautlog.fixtures.Rigs;
import tautlog.recording.CodedTrace;
import tautlog.rig.Rig;
import tautlog.sample.CountBounds;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** Detectors, and beside them the greatest count and a histogram of 64 bins of 512 counts. */
final class WholeChain implements CodedTrace.Reader {
    private static final Rig RIG = Rigs.withLimit("12800", "8000");
    private static final int BINS = 64;
    private static final int BIN_BITS = 9;
    private static final int[] NONE = {};

    final long[] bins = new long[BINS];
    final BenchSink sink;
    private final CodedTrace.Reader detectors;
    private final Runnable end;
    private final Latest open;
    private final int[] counts = new int[StoredCounts.MOST];
    int greatest = Integer.MIN_VALUE;

    /** Gives the counts of the last run or passage, which the detectors have decoded. */
    private interface Latest {
        void copyTo(int back, int n, int[] to);

        /** Where they lie by themselves; empty when they are to be copied. */
        default int[] samples() {
            return NONE;
        }

        /** Where in {@link #samples} {@code n} of them begin that lie together, {@code back} from the last; −1 where they do not. */
        default int at(int back, int n) {
            return -1;
        }
    }

    /** In a ring that can be looked into. */
    private record InRing(CountRing ring) implements Latest {
        @Override
        public void copyTo(int back, int n, int[] to) {
            ring.copyTo(ring.size() - back, n, to);
        }

        @Override
        public int[] samples() {
            return ring.samples();
        }

        @Override
        public int at(int back, int n) {
            long place = ring.size() - back;
            ring.decode(place, place + n - 1);
            int at = (int) place & (ring.samples().length - 1);
            return at + n <= ring.samples().length ? at : -1;
        }
    }

    private WholeChain(CodedTrace.Reader detectors, Runnable end, Latest open, BenchSink sink) {
        this.detectors = detectors;
        this.end = end;
        this.open = open;
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
                return new WholeChain(feed, feed::end, feed::copyBack, feed.sink);
            }
        },
        /** Those that {@code chain.py} has: pulls with rainflow, overloads, shocks. */
        ALIKE {
            @Override
            WholeChain chain() {
                DetectorFeed feed = new DetectorFeed(RIG, DetectorFeed::pullsOverloadsAndShocks);
                return new WholeChain(feed, feed::end, new InRing(feed.ring), feed.sink);
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
            return true;
        }
        int back = passage.samples();
        for (int i = 0; i < passage.runs(); i++) {
            StoredCounts stored = passage.run(i);
            sort(stored, back);
            back -= stored.size();
        }
        return true;
    }

    @Override
    public void run(long number, StoredCounts stored) {
        detectors.run(number, stored);
        sort(stored, stored.size());
    }

    private void sort(StoredCounts stored, int back) {
        greatest = Math.max(greatest, stored.greatest());
        int low = bin(stored.least());
        int high = bin(stored.greatest());
        if (low == high) {
            bins[low] += stored.size();
        } else {
            int at = open.at(back, stored.size());
            if (at < 0) {
                open.copyTo(back, stored.size(), counts);
                sort(counts, 0, stored, low, high);
            } else {
                sort(open.samples(), at, stored, low, high);
            }
        }
    }

    /** Bin by bin: most runs lie in two or three. */
    private void sort(int[] from, int at, StoredCounts stored, int low, int high) {
        int n = stored.size();
        int left = n;
        for (int bin = low; bin < high; bin++) {
            int above = CountBounds.above(from, at, n, ((bin + 1) << BIN_BITS) - 1, stored.least(), stored.greatest());
            bins[bin] += left - above;
            left = above;
        }
        bins[high] += left;
    }

    private static int bin(int count) {
        return Math.max(0, Math.min(BINS - 1, count >> BIN_BITS));
    }

    void end() {
        end.run();
    }
}
