package tautlog.logger.calibrate;

import java.util.Optional;

/**
 * Looks for a window of counts without a gap in which the load is steady.
 *
 * <p>The window is cut into ten blocks. It is steady when the greatest of their means is not further from the least than their
 * noise explains: 6 · s / √(samples of a block) + 1 count, s being the standard deviation within the blocks (of ten means of white
 * noise that is passed once in more than a thousand windows), or than {@link #SHARE} of the way from the first steady window. A load that creeps or swings
 * slower than a block moves the means and not s. Chosen figures. Not thread-safe.
 */
public final class SteadyCounts {
    private static final int BLOCKS = 10;
    /** A sway of 0.02 % of a load is far below what a field calibration can tell. */
    static final double SHARE = 0.000_2;

    private final int block;
    private final int[] window;
    private long next = Long.MIN_VALUE;
    private int filled;
    private Optional<Double> first = Optional.empty();
    private double range = Double.NaN;
    private double allowed;

    /** @param samples of the window; made at least 20 and a multiple of ten */
    public SteadyCounts(int samples) {
        block = Math.max(2, samples / BLOCKS);
        window = new int[block * BLOCKS];
    }

    /** Forgets the samples so far: another load is on. */
    public void clear() {
        filled = 0;
        range = Double.NaN;
    }

    /**
     * Takes a sample.
     *
     * @return the window that it completes, when that is steady; the samples are then used up
     */
    public Optional<SteadyMean> add(long number, int count) {
        if (number != next) {
            filled = 0;
        }
        next = number + 1;
        window[filled++] = count;
        return filled < window.length ? Optional.empty() : judge();
    }

    private Optional<SteadyMean> judge() {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        double total = 0;
        double within = 0;
        for (int b = 0; b < BLOCKS; b++) {
            double mean = mean(b * block, block);
            least = Math.min(least, mean);
            greatest = Math.max(greatest, mean);
            total += mean / BLOCKS;
            within += squares(b * block, block, mean);
        }
        double s = Math.sqrt(within / (BLOCKS * (block - 1)));
        double step = Math.abs(total - first.orElse(total));
        range = greatest - least;
        allowed = Math.max(6 * s / Math.sqrt(block) + 1, SHARE * step);
        if (range > allowed) {
            slide();
            return Optional.empty();
        }
        first = first.or(() -> Optional.of(mean(0, window.length)));
        double sd = Math.sqrt(squares(0, window.length, total) / (window.length - 1));
        filled = 0;
        return Optional.of(new SteadyMean(total, sd, window.length));
    }

    /** The oldest block goes; it is judged again when another is there. */
    private void slide() {
        filled = window.length - block;
        System.arraycopy(window, block, window, 0, filled);
    }

    private double mean(int from, int n) {
        long sum = 0;
        for (int i = from; i < from + n; i++) {
            sum += window[i];
        }
        return (double) sum / n;
    }

    private double squares(int from, int n, double mean) {
        double sum = 0;
        for (int i = from; i < from + n; i++) {
            sum += (window[i] - mean) * (window[i] - mean);
        }
        return sum;
    }

    /** Why nothing steady came yet, in words. */
    public String hindrance() {
        return Double.isNaN(range)
                ? "no whole window of samples has come: look at the cable and at `tautlogd listen`"
                : "the counts still move by %.1f within the window, %.1f would be steady".formatted(range, allowed);
    }
}
