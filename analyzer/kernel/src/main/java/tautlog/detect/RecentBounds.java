package tautlog.detect;

/**
 * Bounds of the samples of the last {@code span} numbers of the stretch, and of some before them: never too narrow, cheap.
 *
 * <p>Two buckets of runs: when the present one covers the span, it becomes the one before. A detector that finds nothing possible
 * within the bounds need not look at the samples.
 */
final class RecentBounds {
    private final int span;
    private int covered;
    private int least = Integer.MAX_VALUE;
    private int greatest = Integer.MIN_VALUE;
    private int leastBefore = Integer.MAX_VALUE;
    private int greatestBefore = Integer.MIN_VALUE;

    RecentBounds(int span) {
        this.span = span;
    }

    void add(Run run) {
        least = Math.min(least, run.least);
        greatest = Math.max(greatest, run.greatest);
        covered += run.n;
        if (covered >= span) {
            leastBefore = least;
            greatestBefore = greatest;
            least = Integer.MAX_VALUE;
            greatest = Integer.MIN_VALUE;
            covered = 0;
        }
    }

    void clear() {
        covered = 0;
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        leastBefore = Integer.MAX_VALUE;
        greatestBefore = Integer.MIN_VALUE;
    }

    /** True when no sample came in this stretch. */
    boolean isEmpty() {
        return greatest == Integer.MIN_VALUE && greatestBefore == Integer.MIN_VALUE;
    }

    int least() {
        return Math.min(least, leastBefore);
    }

    int greatest() {
        return Math.max(greatest, greatestBefore);
    }
}
