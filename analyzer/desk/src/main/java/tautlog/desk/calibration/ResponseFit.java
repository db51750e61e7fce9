package tautlog.desk.calibration;

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
 * @param residualSd standard deviation of the residuals, in units of the response, n − degree − 1 degrees of freedom
 * @param rSquared near 1 even for a poor fit: judge by the residuals
 */
public record ResponseFit(List<Double> coefficients, double residualSd, double rSquared) {
    public ResponseFit {
        coefficients = List.copyOf(coefficients);
    }

    /**
     * Fits a polynomial.
     *
     * @param loads the reference loads, any unit; not modified
     * @param responses what the cell said at each, same length
     * @param degree 1 or 2
     * @throws IllegalArgumentException if the lengths differ, the degree is another, there are too few points to leave a
     *     residual, or all loads are 0
     */
    public static ResponseFit of(double[] loads, double[] responses, int degree) {
        require(loads, responses, degree);
        double scale = DoubleStream.of(loads).map(Math::abs).max().orElse(0);
        if (scale == 0) {
            throw new IllegalArgumentException("loads must not all be 0");
        }
        double[][] powers = Arrays.stream(loads)
                .map(load -> load / scale)
                .mapToObj(x -> degree == 1 ? new double[] {x} : new double[] {x, x * x})
                .toArray(double[][]::new);
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(responses, powers);
        double[] scaled = regression.estimateRegressionParameters();
        Double[] coefficients = new Double[scaled.length];
        for (int power = 0; power < scaled.length; power++) {
            coefficients[power] = scaled[power] / Math.pow(scale, power);
        }
        return new ResponseFit(
                List.of(coefficients), regression.estimateRegressionStandardError(), regression.calculateRSquared());
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
    }
}
