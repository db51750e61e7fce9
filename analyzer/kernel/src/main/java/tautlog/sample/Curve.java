package tautlog.sample;

import java.math.BigInteger;

/**
 * A curved {@link Calibration} in doubles: what the relation of two tensions, means and screens are worked out with.
 *
 * <p>Source: {@code FINDINGS.md}, Counting, "A curve". Every step is a double and stands as that page writes it, so that who
 * follows it gets the same bits. Rising for all counts: from its top on (where the response stops rising) T = 2u goes on, but
 * says nothing of the cell.
 *
 * @param zeroCounts the count of the unloaded cell
 * @param newtonsPerCount at zero, above 0
 * @param curvature per newton; 0 gives the straight line
 */
public record Curve(double zeroCounts, double newtonsPerCount, double curvature) {
    /** The tension in newtons. */
    public double newtons(double counts) {
        double straight = straight(counts);
        if (curvature == 0) {
            return straight;
        }
        return 2 * straight / (1 + root(straight));
    }

    /** The counts that stand for a tension in newtons, to rounding: less than one count off within the range of an int. */
    public double counts(double newtons) {
        double slope = 1 + 2 * curvature * newtons;
        double straight = slope > 0 ? newtons * (1 + curvature * newtons) : newtons / 2;
        return zeroCounts + straight / newtonsPerCount;
    }

    /**
     * The mean tension in newtons: T(m) − κ·k²·v / w³, m mean and v variance of the counts.
     *
     * @param countSum of {@code n} counts
     * @param countSquares the sum of their squares
     * @param n above 0
     */
    public double mean(long countSum, BigInteger countSquares, long n) {
        double meanCounts = (double) countSum / n;
        BigInteger sum = BigInteger.valueOf(countSum);
        double spread = countSquares
                .multiply(BigInteger.valueOf(n))
                .subtract(sum.multiply(sum))
                .doubleValue();
        double variance = spread / ((double) n * n);
        double root = root(straight(meanCounts));
        double bend = root > 0 ? curvature * newtonsPerCount * newtonsPerCount * variance / (root * root * root) : 0;
        return newtons(meanCounts) - bend;
    }

    private double straight(double counts) {
        return (counts - zeroCounts) * newtonsPerCount;
    }

    /** w: what the response rises by per newton there, as a fraction of that at zero. */
    private double root(double straight) {
        return Math.sqrt(Math.max(0, 1 + 4 * curvature * straight));
    }
}
