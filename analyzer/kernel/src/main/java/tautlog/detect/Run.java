package tautlog.detect;

/**
 * At most 128 consecutive samples with what is worth knowing before looking at each: one object, filled anew for every run.
 *
 * <p>The samples are {@code counts[from]} to {@code counts[from + n - 1]}; the first has number {@code first}.
 */
final class Run {
    /** The most samples of a run: also the grain in which recordings keep least and greatest. */
    static final int MOST = 128;

    private static final int SMALL = 1 << 24;

    long first;
    int[] counts = new int[0];
    int from;
    int n;
    int least;
    int greatest;
    long sum;
    /** Of the counts; stays 0 under a straight line, where nobody asks for it. */
    final SquareSum squares = new SquareSum();

    HookupLimits limits;

    Run(HookupLimits limits) {
        this.limits = limits;
    }

    void set(long first, int[] counts, int from, int n) {
        this.first = first;
        this.counts = counts;
        this.from = from;
        this.n = n;
    }

    /** Begins anew, empty: what is added lies in {@code counts} from {@code from} on. */
    void begin(long first, int[] counts, int from, HookupLimits limits) {
        set(first, counts, from, 0);
        this.limits = limits;
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        sum = 0;
    }

    /** Goes on with the samples of {@code next}, which have been put behind those that are here. */
    void add(Run next) {
        n += next.n;
        least = Math.min(least, next.least);
        greatest = Math.max(greatest, next.greatest);
        sum += next.sum;
    }

    int count(int k) {
        return counts[from + k];
    }

    long last() {
        return first + n - 1;
    }

    int lastCount() {
        return counts[from + n - 1];
    }

    /** Position in the run of the first sample equal to {@code count}, which is there. */
    int indexOf(int count) {
        int k = 0;
        while (counts[from + k] != count) {
            k++;
        }
        return k;
    }

    /** How many samples are above {@code count}. */
    int above(int count) {
        int[] c = counts;
        int end = from + n;
        int total = 0;
        for (int i = from; i < end; i++) {
            // the sign of the difference, which needs no branch; a long, as the difference may not fit an int
            total += (int) (((long) count - c[i]) >>> 63);
        }
        return total;
    }

    /** Works out the sum of squares. */
    void square() {
        squares.clear();
        for (int i = from; i < from + n; i++) {
            squares.add(counts[i]);
        }
    }

    /** Works out least, greatest and sum, in one loop: a run is too short for vector code to gain by three. */
    void measure() {
        int[] c = counts;
        int end = from + n;
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        long total = 0;
        for (int i = from; i < end; i++) {
            int count = c[i];
            low = Math.min(low, count);
            high = Math.max(high, count);
            total += count;
        }
        least = low;
        greatest = high;
        sum = total;
    }

    /** Takes least and greatest from one who knows them and works out the sum. */
    void measured(int least, int greatest) {
        this.least = least;
        this.greatest = greatest;
        sum = least > -SMALL && greatest < SMALL ? smallSum() : longSum();
    }

    /** 128 · 2²⁴ fits an int: this loop is twice as fast as the one below. */
    private int smallSum() {
        int[] c = counts;
        int total = 0;
        for (int i = from; i < from + n; i++) {
            total += c[i];
        }
        return total;
    }

    private long longSum() {
        long total = 0;
        for (int i = from; i < from + n; i++) {
            total += counts[i];
        }
        return total;
    }
}
