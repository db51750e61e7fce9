package tautlog.sample;

/** The least and the greatest of counts that lie side by side. Measured anew again and again; allocates nothing. */
public final class CountBounds {
    private int least;
    private int greatest;

    /** Of {@code counts[from]} to {@code counts[from + n - 1]}, 1 count or more. */
    public void measure(int[] counts, int from, int n) {
        int low = counts[from];
        int high = low;
        int low2 = low;
        int high2 = low;
        int low3 = low;
        int high3 = low;
        int end = from + n;
        int i = from + n % 3;
        for (int k = from; k < i; k++) {
            low = Math.min(low, counts[k]);
            high = Math.max(high, counts[k]);
        }
        for (; i < end - 2; i += 3) {
            low = Math.min(low, counts[i]);
            high = Math.max(high, counts[i]);
            low2 = Math.min(low2, counts[i + 1]);
            high2 = Math.max(high2, counts[i + 1]);
            low3 = Math.min(low3, counts[i + 2]);
            high3 = Math.max(high3, counts[i + 2]);
        }
        low = Math.min(low, Math.min(low2, low3));
        high = Math.max(high, Math.max(high2, high3));
        least = low;
        greatest = high;
    }

    /**
     * How many of {@code counts[from]} to {@code counts[from + n - 1]} are above {@code than}.
     *
     * @param least of them, or a bound, as is {@code greatest}: these say which arithmetic will do
     */
    public static int above(int[] counts, int from, int n, int than, int least, int greatest) {
        boolean fits = (long) than - least <= Integer.MAX_VALUE && (long) than - greatest >= Integer.MIN_VALUE;
        return fits ? aboveInInts(counts, from, n, than) : aboveInLongs(counts, from, n, than);
    }

    /** The sign of the difference, which needs no branch: half of the time of longs. */
    private static int aboveInInts(int[] counts, int from, int n, int than) {
        int total = 0;
        for (int i = from; i < from + n; i++) {
            total += (than - counts[i]) >>> 31;
        }
        return total;
    }

    private static int aboveInLongs(int[] counts, int from, int n, int than) {
        int total = 0;
        for (int i = from; i < from + n; i++) {
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
