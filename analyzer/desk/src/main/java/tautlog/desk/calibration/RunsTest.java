package tautlog.desk.calibration;

import java.util.List;
import org.hipparchus.util.CombinatoricsUtils;

/**
 * Whether residuals lie on both sides of a fit by chance or in long runs on one side, as they do when the fit has the wrong shape.
 *
 * <p>Source: A. Wald and J. Wolfowitz, "On a test whether two samples are from the same population", 1940: the exact
 * distribution of the number of runs (from memory; checked in the test by listing all orders). One mean residual a load, in
 * the order of loads, so that hysteresis and repeats do not hide a bend.
 *
 * @param runs stretches of residuals on one side
 * @param above residuals above the fit
 * @param below residuals below it
 */
record RunsTest(int runs, int above, int below) {
    /** @param residuals in the order of loads; what is 0 counts on no side */
    static RunsTest of(List<Double> residuals) {
        int runs = 0;
        int above = 0;
        int below = 0;
        double side = 0;
        for (double residual : residuals) {
            double now = Math.signum(residual);
            if (now == 0) {
                continue;
            }
            runs += now == side ? 0 : 1;
            above += now > 0 ? 1 : 0;
            below += now < 0 ? 1 : 0;
            side = now;
        }
        return new RunsTest(runs, above, below);
    }

    /** The chance of so few runs or fewer when the order of the sides is chance; 1 when all lie on one side. */
    double probability() {
        if (above == 0 || below == 0) {
            return 1;
        }
        double sum = 0;
        for (int r = 2; r <= runs; r++) {
            sum += orders(r);
        }
        return Math.min(1, sum);
    }

    /** The share of all orders of the sides that make just {@code r} runs. */
    private double orders(int r) {
        int half = r / 2;
        return r % 2 == 0
                ? 2 * share(above - 1, half - 1, below - 1, half - 1)
                : share(above - 1, half, below - 1, half - 1) + share(above - 1, half - 1, below - 1, half);
    }

    private double share(int n, int k, int m, int j) {
        if (k > n || j > m) {
            return 0;
        }
        return Math.exp(CombinatoricsUtils.binomialCoefficientLog(n, k)
                + CombinatoricsUtils.binomialCoefficientLog(m, j)
                - CombinatoricsUtils.binomialCoefficientLog(above + below, above));
    }
}
