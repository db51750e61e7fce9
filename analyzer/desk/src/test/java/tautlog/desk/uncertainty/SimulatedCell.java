package tautlog.desk.uncertainty;

import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.calibration.ResponseFit;
import tautlog.fixtures.Rigs;
import tautlog.rig.Rig;

/**
 * A load cell at a fairlead whose truth is known, and which is calibrated with errors.
 *
 * @param scatterCounts standard deviation of what a load reads beside the response: the same throughout a pull
 * @param referencePercent expanded uncertainty (k = 2) of the loads that it is calibrated with
 * @param degree 1: it is straight, 2: it bends
 */
record SimulatedCell(double scatterCounts, double referencePercent, int degree) {
    /** Two lines at right angles: the cell carries √2 times the tension. */
    static final double CARRIED = Math.sqrt(2);

    private static final double[] LOADS = {0, 10_000, 20_000, 30_000, 40_000, 50_000, 60_000};

    static Rig rig(double anglePlusMinusDegrees) {
        return rig(90, anglePlusMinusDegrees);
    }

    static Rig rig(double angleDegrees, double anglePlusMinusDegrees) {
        return Rigs.parsed(String.join(
                "\n",
                "schema = 1",
                "units = \"kN\"",
                "[winch]",
                "name = \"upper\"",
                "rated_pull = \"40 kN\"",
                "[cell]",
                "at = \"fairlead\"",
                "angle_between_lines_deg = " + angleDegrees,
                "angle_plus_minus_deg = " + anglePlusMinusDegrees,
                "[[gear]]",
                "id = \"choker\"",
                "kind = \"chain\"",
                "wll = \"20 kN\"",
                "[[hookup]]",
                "id = \"straight\"",
                "default = true",
                "items = [ { gear = \"choker\" } ]"));
    }

    /** What it truly answers. */
    double countsAt(double cellNewtons) {
        return 4_000 + 2 * cellNewtons + (degree == 1 ? 0 : 4e-7 * cellNewtons * cellNewtons);
    }

    /** Seven loads up to 60 kN, each twice. */
    CellCalibration calibrated(Random random) throws ConfigException {
        double[] loads = new double[2 * LOADS.length];
        double[] counts = new double[loads.length];
        double wrong = 1 + referencePercent / 200 * random.nextGaussian();
        for (int i = 0; i < loads.length; i++) {
            loads[i] = LOADS[i % LOADS.length];
            counts[i] = countsAt(loads[i] * wrong) + scatterCounts * random.nextGaussian();
        }
        return CellCalibration.parse("calibration.toml", toml(ResponseFit.of(loads, counts, degree)));
    }

    private String toml(ResponseFit fit) {
        StringBuilder text = new StringBuilder("schema = 1\n");
        text.append("b0_counts = ").append(fit.coefficients().get(0)).append('\n');
        text.append("b1_counts_per_newton = ").append(fit.coefficients().get(1)).append('\n');
        if (degree == 2) {
            text.append("b2_counts_per_newton2 = ")
                    .append(fit.coefficients().get(2))
                    .append('\n');
        }
        text.append("[fit]\nresidual_sd_counts = ").append(fit.residualSd());
        text.append("\ndegrees_of_freedom = ").append(fit.degreesOfFreedom());
        text.append("\nleast_load_n = 0.0\ngreatest_load_n = 60000.0\n");
        if (referencePercent > 0) {
            text.append("reference_percent = ").append(referencePercent).append('\n');
        }
        text.append("[fit.covariance]\n");
        int n = degree + 1;
        for (int row = 0; row < n; row++) {
            for (int column = row; column < n; column++) {
                text.append("b" + row + "_b" + column + " = ")
                        .append(fit.covariance().get(row * n + column))
                        .append('\n');
            }
        }
        return text.toString();
    }
}
