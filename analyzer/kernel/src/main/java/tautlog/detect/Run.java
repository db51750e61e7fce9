package tautlog.detect;

import org.jspecify.annotations.Nullable;
import tautlog.sample.CountBounds;
import tautlog.sample.StoredCounts;

/**
 * Consecutive samples, 128 at most or a passage of slack line, with what is worth knowing before looking at each: one object, filled
 * anew for every run.
 *
 * <p>The samples lie in a {@link CountRing}, perhaps still coded: asking for single counts or their sum costs time, asking for least
 * and greatest does not.
 */
final class Run {
    /** The most samples of a run but for a passage. */
    static final int MOST = StoredCounts.MOST;

    private static final int SMALL = 1 << 24;

    private final CountRing ring;
    private final int[] counts;
    private long place;
    private int from;
    private boolean isDecoded;
    private long sum;
    private boolean isSummed;
    private final CountBounds bounds = new CountBounds();
    private @Nullable Run part;

    long first;
    int n;
    int least;
    int greatest;
    /** Of the counts; stays 0 under a straight line, where nobody asks for it. */
    final SquareSum squares = new SquareSum();

    HookupLimits limits;

    Run(CountRing ring, HookupLimits limits) {
        this.ring = ring;
        this.limits = limits;
        counts = ring.samples();
    }

    /** Begins anew, empty, with the sample that the ring takes next; it has number {@code first}. */
    void begin(long first, HookupLimits limits) {
        this.first = first;
        this.limits = limits;
        place = ring.size();
        from = ring.next();
        n = 0;
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        sum = 0;
        isSummed = true;
        isDecoded = true;
    }

    /** Goes on with the samples of {@code next}, which have been put behind those that are here. */
    void add(Piece next) {
        n += next.n;
        least = Math.min(least, next.least);
        greatest = Math.max(greatest, next.greatest);
        sum += next.sum;
    }

    /** Goes on with {@code stored}, which has been put into the ring. */
    void add(StoredCounts stored) {
        n += stored.size();
        least = Math.min(least, stored.least());
        greatest = Math.max(greatest, stored.greatest());
        isSummed = false;
        isDecoded = false;
    }

    /** The samples from {@code k} to before {@code end} as a run, until another part is asked for. */
    Run part(int k, int end) {
        if (part == null) {
            part = new Run(ring, limits);
        }
        part.become(this, k, end - k);
        return part;
    }

    private void become(Run whole, int k, int samples) {
        whole.open();
        first = whole.first + k;
        limits = whole.limits;
        from = whole.from + k;
        n = samples;
        isDecoded = true;
        isSummed = false;
        bounds.measure(counts, from, n);
        least = bounds.least();
        greatest = bounds.greatest();
        squares.clear();
        if (limits.curved) {
            square();
        }
    }

    int count(int k) {
        return open()[from + k];
    }

    long last() {
        return first + n - 1;
    }

    int lastCount() {
        return count(n - 1);
    }

    /** Writes the counts from {@code k} to before {@code end} to {@code to[at]} and behind. */
    void copyTo(int k, int end, int[] to, int at) {
        System.arraycopy(open(), from + k, to, at, end - k);
    }

    /** Position in the run of the first sample equal to {@code count}, which is there. */
    int indexOf(int count) {
        open();
        int k = 0;
        while (counts[from + k] != count) {
            k++;
        }
        return k;
    }

    /** The greatest of the samples from {@code k} to before {@code end}, 1 or more. */
    int greatest(int k, int end) {
        return CountRing.greatest(open(), from + k, end - k);
    }

    /** How many samples are above {@code count}. */
    int above(int count) {
        return CountBounds.above(open(), from, n, count, least, greatest);
    }

    /** Where all samples lie open; those of this run from {@link #at} on. */
    int[] open() {
        if (!isDecoded) {
            ring.decode(place, place + n - 1);
            isDecoded = true;
        }
        return counts;
    }

    /** See {@link #open}. */
    int at() {
        return from;
    }

    /** Works out the sum of squares. */
    void square() {
        open();
        squares.clear();
        for (int i = from; i < from + n; i++) {
            squares.add(counts[i]);
        }
    }

    /** Of the counts. */
    long sum() {
        if (!isSummed) {
            open();
            sum = n <= MOST && least > -SMALL && greatest < SMALL ? smallSum() : longSum();
            isSummed = true;
        }
        return sum;
    }

    /** 128 · 2²⁴ fits an int, and of four sums side by side none waits for another. */
    private int smallSum() {
        int[] c = counts;
        int end = from + n;
        int ones = 0;
        int twos = 0;
        int threes = 0;
        int fours = 0;
        int i = from;
        for (; i < end - 3; i += 4) {
            ones += c[i];
            twos += c[i + 1];
            threes += c[i + 2];
            fours += c[i + 3];
        }
        for (; i < end; i++) {
            ones += c[i];
        }
        return ones + twos + threes + fours;
    }

    private long longSum() {
        long total = 0;
        for (int i = from; i < from + n; i++) {
            total += counts[i];
        }
        return total;
    }
}
