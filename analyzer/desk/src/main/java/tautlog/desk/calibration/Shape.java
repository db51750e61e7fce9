package tautlog.desk.calibration;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A fit beside the readings it was made from.
 *
 * @param residuals counts of the reading less those of the fit, in the order of the readings
 * @param runs of the mean residual at each load, in the order of loads
 */
record Shape(ResponseFit fit, List<Double> residuals, RunsTest runs) {
    Shape {
        residuals = List.copyOf(residuals);
    }

    static Shape of(LoadReadings all, List<LoadStep> steps, int degree) {
        ResponseFit fit = ResponseFit.of(all.newtons(), all.counts(), degree);
        double[] newtons = all.newtons();
        double[] counts = all.counts();
        List<Double> residuals = IntStream.range(0, newtons.length)
                .mapToObj(i -> counts[i] - fit.response(newtons[i]))
                .toList();
        List<Double> means = steps.stream()
                .map(step -> step.meanCounts() - fit.response(step.newtons()))
                .toList();
        return new Shape(fit, residuals, RunsTest.of(means));
    }

    double greatestResidual() {
        return residuals.stream().mapToDouble(Math::abs).max().orElse(0);
    }

    /** What a difference in counts is in newtons, by the slope at zero load. */
    double newtons(double counts) {
        return counts / fit.coefficients().get(1);
    }
}
