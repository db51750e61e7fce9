package tautlog.sample;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Turns counts into newtons and back: counts = zero + (T + curvature · T²) / newtons per count, rising.
 *
 * <p>The numbers are decimals, so that a threshold in newtons becomes one exact count and no comparison of a tension with a
 * threshold depends on how a double is rounded. Most cells follow a straight line, curvature 0; then the relation of two tensions
 * is exact as well. Under a curve the tension of a count is the double that {@link #newtons} gives.
 *
 * @param zeroCounts the count of the unloaded cell
 * @param newtonsPerCount at zero, above 0; a cell wired the other way round has its signal wires swapped, not a negative factor
 * @param curvature per newton: what the response gains on the straight line, as a fraction of it, for each newton
 */
public record Calibration(BigDecimal zeroCounts, BigDecimal newtonsPerCount, BigDecimal curvature) {
    /** @throws IllegalArgumentException if {@code newtonsPerCount} is not above 0 */
    public Calibration {
        if (newtonsPerCount.signum() <= 0) {
            throw new IllegalArgumentException("newtonsPerCount must be above 0, was " + newtonsPerCount);
        }
    }

    /** A straight line. */
    public Calibration(BigDecimal zeroCounts, BigDecimal newtonsPerCount) {
        this(zeroCounts, newtonsPerCount, BigDecimal.ZERO);
    }

    public static Calibration of(String zeroCounts, String newtonsPerCount) {
        return new Calibration(new BigDecimal(zeroCounts), new BigDecimal(newtonsPerCount));
    }

    public boolean isStraight() {
        return curvature.signum() == 0;
    }

    /**
     * The tension in newtons; for reports, and under a curve for the relation of two tensions.
     *
     * <p>u = (counts − zero) · newtonsPerCount; T = u, under a curve T = 2u / (1 + √(1 + 4 · curvature · u)): every
     * step a double. Beyond the top of a curve that bends down the tension at its top is given.
     */
    public double newtons(double counts) {
        double straight = (counts - zeroCounts.doubleValue()) * newtonsPerCount.doubleValue();
        if (isStraight()) {
            return straight;
        }
        return 2 * straight / (1 + Math.sqrt(Math.max(0, 1 + 4 * curvature.doubleValue() * straight)));
    }

    /** The tension in newtons: exact for a straight line, else the double of {@link #newtons}. */
    public BigDecimal exactNewtons(long counts) {
        return isStraight()
                ? BigDecimal.valueOf(counts).subtract(zeroCounts).multiply(newtonsPerCount)
                : new BigDecimal(newtons((double) counts));
    }

    /**
     * The least count whose tension is {@code newtons} or more: T(c) ≥ newtons ⟺ c ≥ this.
     *
     * <p>Beyond the range of an int the nearest int is given: no converter of 24 bits reaches it.
     */
    public int leastCountsAtOrAbove(BigDecimal newtons) {
        return clamp(countsAt(newtons, RoundingMode.CEILING));
    }

    /** The greatest count whose tension is {@code newtons} or less: T(c) ≤ newtons ⟺ c ≤ this. */
    public int greatestCountsAtOrBelow(BigDecimal newtons) {
        return clamp(countsAt(newtons, RoundingMode.FLOOR));
    }

    /** The least difference of two counts that stands for {@code newtons} or more; straight lines only. */
    public long leastDifference(BigDecimal newtons) {
        BigDecimal difference = newtons.divide(newtonsPerCount, 0, RoundingMode.CEILING);
        return difference.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact();
    }

    /** The greatest difference of two counts that stands for {@code newtons} or less; straight lines only. */
    public long greatestDifference(BigDecimal newtons) {
        BigDecimal difference = newtons.divide(newtonsPerCount, 0, RoundingMode.FLOOR);
        return difference.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact();
    }

    private BigDecimal countsAt(BigDecimal newtons, RoundingMode rounding) {
        // zero + response / factor <=> (zero · factor + response) / factor: one division, rounded once
        BigDecimal response = newtons.add(curvature.multiply(newtons).multiply(newtons));
        BigDecimal numerator = zeroCounts.multiply(newtonsPerCount).add(response, MathContext.UNLIMITED);
        return numerator.divide(newtonsPerCount, 0, rounding);
    }

    private static int clamp(BigDecimal counts) {
        return counts.max(BigDecimal.valueOf(Integer.MIN_VALUE))
                .min(BigDecimal.valueOf(Integer.MAX_VALUE))
                .intValueExact();
    }
}
