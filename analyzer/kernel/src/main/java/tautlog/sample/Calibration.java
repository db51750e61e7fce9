package tautlog.sample;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Turns counts into newtons and back: counts = zero + (T + curvature · T²) / newtons per count, rising.
 *
 * <p>The numbers are decimals, so that a threshold in newtons becomes one exact count and no comparison of a tension with a
 * threshold depends on how a double is rounded. Most cells follow a straight line, curvature 0; then the relation of two tensions
 * is exact as well. Under a curve the tension of a count is the double that {@link Curve#newtons} gives.
 *
 * @param zeroCounts the count of the unloaded cell
 * @param newtonsPerCount at zero, above 0; a cell wired the other way round has its signal wires swapped, not a negative factor
 * @param curvature per newton: what the response gains on the straight line, as a fraction of it, for each newton
 */
public record Calibration(BigDecimal zeroCounts, BigDecimal newtonsPerCount, BigDecimal curvature) {
    private static final BigDecimal MOST = BigDecimal.valueOf(Long.MAX_VALUE);

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

    /** The same in doubles, for what is not straight. */
    public Curve curve() {
        return new Curve(zeroCounts.doubleValue(), newtonsPerCount.doubleValue(), curvature.doubleValue());
    }

    /**
     * The tension in newtons: u = (counts − zero) · newtonsPerCount for a straight line, else {@link Curve#newtons}; for
     * reports, and under a curve for the relation of two tensions.
     */
    public double newtons(double counts) {
        return curve().newtons(counts);
    }

    /**
     * The mean tension in newtons of {@code n} samples, from sums that do not depend on their order.
     *
     * @param countSquares the sum of the squares; only a curve asks for it
     * @param n above 0
     */
    public double meanNewtons(long countSum, BigInteger countSquares, long n) {
        return isStraight() ? newtons((double) countSum / n) : curve().mean(countSum, countSquares, n);
    }

    /**
     * The least count at which a response that bends down rises no more; from there on nothing is known of the tension. Beyond
     * every int for another response.
     */
    public long topCounts() {
        return curvature.signum() < 0
                ? turnCounts(RoundingMode.CEILING).min(MOST).longValueExact()
                : Long.MAX_VALUE;
    }

    /** The greatest count, below zero, at which a response that bends up falls no more; below every int for another one. */
    public long bottomCounts() {
        return curvature.signum() > 0
                ? turnCounts(RoundingMode.FLOOR).max(MOST.negate()).longValueExact()
                : Long.MIN_VALUE;
    }

    /** Where 1 + 4 · curvature · newtonsPerCount · (c − zero) is 0, rounded once. */
    private BigDecimal turnCounts(RoundingMode rounding) {
        BigDecimal slope = newtonsPerCount.multiply(curvature).multiply(BigDecimal.valueOf(4));
        return zeroCounts.multiply(slope).subtract(BigDecimal.ONE).divide(slope, 0, rounding);
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
        BigDecimal bend = curvature.multiply(newtons);
        boolean rises = bend.multiply(BigDecimal.valueOf(2)).add(BigDecimal.ONE).signum() > 0;
        // from its top on the line goes on straight, T = 2u
        BigDecimal response = rises ? newtons.add(bend.multiply(newtons)) : newtons.divide(BigDecimal.valueOf(2));
        BigDecimal numerator = zeroCounts.multiply(newtonsPerCount).add(response, MathContext.UNLIMITED);
        return numerator.divide(newtonsPerCount, 0, rounding);
    }

    private static int clamp(BigDecimal counts) {
        return counts.max(BigDecimal.valueOf(Integer.MIN_VALUE))
                .min(BigDecimal.valueOf(Integer.MAX_VALUE))
                .intValueExact();
    }
}
