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
