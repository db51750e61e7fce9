package tautlog.detect;

/** Samples that come with a frame: {@code counts[from]} to {@code counts[from + n - 1]}. One object, filled anew for every piece. */
final class Piece {
    long first;
    int[] counts = new int[0];
    int from;
    int n;
    int least;
    int greatest;
    long sum;

    /** Takes the samples and works out least, greatest and sum, in one loop: a piece is too short for vector code to gain by three. */
    void set(long first, int[] counts, int from, int n) {
        this.first = first;
        this.counts = counts;
        this.from = from;
        this.n = n;
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        long total = 0;
        for (int i = from; i < from + n; i++) {
            int count = counts[i];
            low = Math.min(low, count);
            high = Math.max(high, count);
            total += count;
        }
        least = low;
        greatest = high;
        sum = total;
    }
}
