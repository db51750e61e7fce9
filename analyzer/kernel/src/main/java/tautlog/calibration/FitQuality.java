package tautlog.calibration;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How well a response counts = b0 + b1·F (+ b2·F²) describes the readings that it was fitted to.
 *
 * @param residualSdCounts standard deviation of the residuals, above or equal to 0
 * @param degreesOfFreedom readings − coefficients, 1 or more
 * @param covariance of the coefficients, row by row, counts and newtons: 4 numbers for a straight line, 9 for a curve
 * @param leastNewtons the least reference load
 * @param greatestNewtons the greatest; beyond it nothing was proven
 * @param referencePercent expanded uncertainty (k = 2) of the reference loads in percent of them; empty when nobody stated it
 * @param directions from which side the loads were come to
 */
public record FitQuality(
        double residualSdCounts,
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
        if (covariance.size() != 4 && covariance.size() != 9) {
            throw new IllegalArgumentException("covariance must have 4 or 9 numbers, had " + covariance.size());
        }
    }

    /** 1 for a straight line, 2 for a curve. */
    public int degree() {
        return covariance.size() == 4 ? 1 : 2;
    }

    /**
     * Standard deviation, in counts, of what the fitted response says at {@code newtons}: the coefficients' part alone,
     * without the scatter of a single reading.
     */
    public double responseSdCounts(double newtons) {
        int n = degree() + 1;
        double variance = 0;
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                variance += covariance.get(row * n + column) * Math.pow(newtons, row + column);
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }
}
