package tautlog.desk.uncertainty;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

/** Where a rising function of a width in newtons passes 0. */
record Crossing(UnivariateFunction rising) {
    /** Of what is shown no digit changes. */
    private static final double RELATIVE = 1e-7;

    private static final int MOST_STEPS = 200;

    /** Found to a ten millionth; {@code low} or {@code high} when it passes 0 outside of them. */
    double between(double low, double high) {
        if (rising.value(low) >= 0) {
            return low;
        }
        return rising.value(high) <= 0
                ? high
                : new BrentSolver(RELATIVE, RELATIVE * high, Double.MIN_NORMAL).solve(MOST_STEPS, rising, low, high);
    }
}
