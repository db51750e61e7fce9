package tautlog.desk.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * The least-squares polynomial response = b0 + b1·F (+ b2·F²) of a load cell, by QR.
 *
 * <p>Loads are divided by the greatest of them before the fit: with loads of millions the square would otherwise cost the last
 * digits. Checked against the certified values of two NIST reference data sets to 1e-9.
 *
 * @param coefficients b0, b1 and, for degree 2, b2: response per load to the power of the index
 * @param covariance of the coefficients, row by row: 4 numbers for a straight line, 9 for a curve
 * @param residualSd standard deviation of the residuals, in units of the response
 * @param degreesOfFreedom n − degree − 1
 * @param rSquared near 1 even for a poor fit: judge by the residuals
 */
public record ResponseFit(
        List<Double> coefficients, List<Double> covariance, double residualSd, int degreesOfFreedom, double rSquared) {
    public ResponseFit {
        coefficients = List.copyOf(coefficients);
        covariance = List.copyOf(covariance);
    }

    /**
     * Fits a polynomial.
     *
     * @param loads the reference loads, any unit; not modified
     * @param responses what the cell said at each, same length
     * @param degree 1 or 2
     * @throws IllegalArgumentException if the lengths differ, the degree is another, there are too few points to leave a
     *     residual, or fewer different loads than coefficients
     */
    public static ResponseFit of(double[] loads, double[] responses, int degree) {
        require(loads, responses, degree);
        double scale = DoubleStream.of(loads).map(Math::abs).max().orElse(0);
        double[][] powers = Arrays.stream(loads)
                .map(load -> load / scale)
                .mapToObj(x -> degree == 1 ? new double[] {x} : new double[] {x, x * x})
                .toArray(double[][]::new);
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(responses, powers);
        double[] scaled = regression.estimateRegressionParameters();
        List<Double> coefficients = new ArrayList<>();
        for (int power = 0; power < scaled.length; power++) {
            coefficients.add(scaled[power] / Math.pow(scale, power));
        }
        return new ResponseFit(
                coefficients,
                covariance(regression, scale),
                regression.estimateRegressionStandardError(),
                loads.length - degree - 1,
                regression.calculateRSquared());
    }

    /** The library gives it for loads that were divided by {@code scale}, without the residuals' variance. */
    private static List<Double> covariance(OLSMultipleLinearRegression regression, double scale) {
        double variance = regression.estimateErrorVariance();
        double[][] scaled = regression.estimateRegressionParametersVariance();
        List<Double> numbers = new ArrayList<>();
        for (int row = 0; row < scaled.length; row++) {
            for (int column = 0; column < scaled.length; column++) {
                numbers.add(variance * scaled[row][column] / Math.pow(scale, row + column));
            }
        }
        return numbers;
    }

    private static void require(double[] loads, double[] responses, int degree) {
        if (degree != 1 && degree != 2) {
            throw new IllegalArgumentException("degree must be 1 or 2, was " + degree);
        }
        if (loads.length != responses.length) {
            throw new IllegalArgumentException(
                    "loads and responses must be as many, were " + loads.length + " and " + responses.length);
        }
        if (loads.length < degree + 2) {
            throw new IllegalArgumentException(
                    "a fit of degree " + degree + " needs " + (degree + 2) + " points or more, had " + loads.length);
        }
        long different = Arrays.stream(loads).distinct().count();
        if (different <= degree) {
            throw new IllegalArgumentException(
                    "a fit of degree " + degree + " needs " + (degree + 1) + " different loads, had " + different);
        }
    }

    public int degree() {
        return coefficients.size() - 1;
    }

    /** b2, 0 for a straight line. */
    double bend() {
        return degree() == 2 ? coefficients.get(2) : 0;
    }

    /** What the fit says at {@code load}. */
    double response(double load) {
        return coefficients.get(0) + load * (coefficients.get(1) + load * bend());
    }

    /** By how much the fit rises there, response per load. */
    double slope(double load) {
        return coefficients.get(1) + 2 * bend() * load;
    }

    /** Standard deviation of a coefficient, from the covariance's diagonal. */
    double sd(int coefficient) {
        return Math.sqrt(covariance.get(coefficient * (degree() + 2)));
    }

    /** Whether it rises from {@code least} to {@code greatest}, both included. */
    boolean rises(double least, double greatest) {
        return coefficients.get(1) > 0 && slope(least) > 0 && slope(greatest) > 0;
    }

    /** The residuals' sum of squares. */
    double residualSquares() {
        return residualSd * residualSd * degreesOfFreedom;
    }
}
