package tautlog.sample;

/** The least and the greatest of counts that lie side by side. Measured anew again and again; allocates nothing. */
public final class CountBounds {
    private int least;
    private int greatest;

    /** Of {@code counts[from]} to {@code counts[from + n - 1]}, 1 count or more. */
    public void measure(int[] counts, int from, int n) {
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        for (int i = from; i < from + n; i++) {
            low = Math.min(low, counts[i]);
            high = Math.max(high, counts[i]);
        }
        least = low;
        greatest = high;
    }

    /** How many of {@code counts[from]} to {@code counts[from + n - 1]} are above {@code than}. */
    public static int above(int[] counts, int from, int n, int than) {
        int total = 0;
        for (int i = from; i < from + n; i++) {
            // the sign of the difference, which needs no branch; a long, as the difference may not fit an int
            total += (int) (((long) than - counts[i]) >>> 63);
        }
        return total;
    }

    public int least() {
        return least;
    }

    public int greatest() {
        return greatest;
    }
}
