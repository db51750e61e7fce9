package tautlog.calibration;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How well a response counts = b0 + b1·F (+ b2·F²) describes the readings that it was fitted to.
 *
 * @param residualSdCounts standard deviation of the residuals, above or equal to 0
 * @param resolutionCounts by how much the counts of those readings step; 0 when nobody said it
 * @param degreesOfFreedom readings − coefficients, 1 or more
 * @param covariance of the coefficients, row by row, counts and newtons: 4 numbers for a straight line, 9 for a curve
 * @param leastNewtons the least reference load
 * @param greatestNewtons the greatest; beyond it nothing was proven
 * @param referencePercent expanded uncertainty (k = 2) of the reference loads in percent of them; empty when nobody stated it
 * @param directions from which side the loads were come to
 */
public record FitQuality(
        double residualSdCounts,
        double resolutionCounts,
        int degreesOfFreedom,
        List<Double> covariance,
        double leastNewtons,
        double greatestNewtons,
        OptionalDouble referencePercent,
        Directions directions) {
    /** @throws IllegalArgumentException if a number is out of its range, or the covariance has another length */
    public FitQuality {
        covariance = List.copyOf(covariance);
        if (!(residualSdCounts >= 0) || degreesOfFreedom < 1) {
            throw new IllegalArgumentException(
                    "residualSdCounts must be 0 or more and degreesOfFreedom 1 or more, were " + residualSdCounts + ", "
                            + degreesOfFreedom);
        }
        if (!(resolutionCounts >= 0)) {
            throw new IllegalArgumentException("resolutionCounts must be 0 or more, was " + resolutionCounts);
        }
        if (covariance.size() != 4 && covariance.size() != 9) {
            throw new IllegalArgumentException("covariance must have 4 or 9 numbers, had " + covariance.size());
        }
    }

    /** 1 for a straight line, 2 for a curve. */
    public int degree() {
        return covariance.size() == 4 ? 1 : 2;
    }

    /** Standard deviation of what rounding to a step does to a reading: that of a rectangle as wide as the step. */
    public double roundingSdCounts() {
        return resolutionCounts / Math.sqrt(12);
    }

    /** Of a reading: the residuals', or what rounding alone would make of them where they show less. */
    public double scatterSdCounts() {
        return Math.max(residualSdCounts, roundingSdCounts());
    }

    /**
     * Standard deviation, in counts, of what the fitted response says at {@code newtons}: the coefficients' part alone,
     * without the scatter of a single reading. Where the residuals show less scatter than rounding makes ({@link
     * #scatterSdCounts}), the covariance is taken as that much greater.
     */
    public double responseSdCounts(double newtons) {
        double[] powers = new double[degree() + 1];
        Arrays.setAll(powers, power -> Math.pow(newtons, power));
        return residualSdCounts == 0 && covariance.get(0) == 0 ? roundingSdCounts() : coefficientsSd(powers);
    }

    /**
     * Standard deviation of the sum of {@code weights} times the coefficients, in counts times the unit of the weights of b0; as
     * {@link #responseSdCounts} where the readings were rounded.
     *
     * @param weights of b0, b1 and, for a curve, b2
     */
    public double coefficientsSd(double[] weights) {
        double variance = 0;
        for (int row = 0; row < weights.length; row++) {
            for (int column = 0; column < weights.length; column++) {
                variance += weights[row] * covariance.get(row * weights.length + column) * weights[column];
            }
        }
        double share = residualSdCounts == 0 ? 1 : scatterSdCounts() / residualSdCounts;
        return Math.sqrt(Math.max(0, variance)) * share;
    }

    /** The least by which a single reading steps: a count, or more where the calibration's readings stepped by more. */
    public double readingStepCounts() {
        return Math.max(1, resolutionCounts);
    }
}
