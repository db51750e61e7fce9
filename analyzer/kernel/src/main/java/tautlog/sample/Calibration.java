package tautlog.sample;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Turns counts into newtons: T = (c − zero) · newtons per count, a straight line that rises.
 *
 * <p>The two numbers are decimals as a person wrote them, so that a threshold in newtons becomes one exact count and
 * no comparison in the detectors depends on how a double is rounded.
 *
 * @param zeroCounts the count of the unloaded cell
 * @param newtonsPerCount above 0; a cell wired the other way round has its signal wires swapped, not a negative factor
 */
public record Calibration(BigDecimal zeroCounts, BigDecimal newtonsPerCount) {
    /** @throws IllegalArgumentException if {@code newtonsPerCount} is not above 0 */
    public Calibration {
        if (newtonsPerCount.signum() <= 0) {
            throw new IllegalArgumentException("newtonsPerCount must be above 0, was " + newtonsPerCount);
        }
    }

    public static Calibration of(String zeroCounts, String newtonsPerCount) {
        return new Calibration(new BigDecimal(zeroCounts), new BigDecimal(newtonsPerCount));
    }

    /** The tension in newtons, to rounding; for reports, not for comparisons with a threshold. */
    public double newtons(double counts) {
        return (counts - zeroCounts.doubleValue()) * newtonsPerCount.doubleValue();
    }

    /** The tension in newtons, exact. */
    public BigDecimal exactNewtons(long counts) {
        return BigDecimal.valueOf(counts).subtract(zeroCounts).multiply(newtonsPerCount);
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

    /** The least difference of two counts that stands for {@code newtons} or more. */
    public long leastDifference(BigDecimal newtons) {
        BigDecimal difference = newtons.divide(newtonsPerCount, 0, RoundingMode.CEILING);
        return difference.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact();
    }

    /** The greatest difference of two counts that stands for {@code newtons} or less. */
    public long greatestDifference(BigDecimal newtons) {
        BigDecimal difference = newtons.divide(newtonsPerCount, 0, RoundingMode.FLOOR);
        return difference.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact();
    }

    private BigDecimal countsAt(BigDecimal newtons, RoundingMode rounding) {
        // zero + newtons / factor <=> (zero · factor + newtons) / factor: one division, rounded once
        BigDecimal numerator = zeroCounts.multiply(newtonsPerCount).add(newtons, MathContext.UNLIMITED);
        return numerator.divide(newtonsPerCount, 0, rounding);
    }

    private static int clamp(BigDecimal counts) {
        return counts.max(BigDecimal.valueOf(Integer.MIN_VALUE))
                .min(BigDecimal.valueOf(Integer.MAX_VALUE))
                .intValueExact();
    }
}
