package tautlog.desk.calibration;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Which degree is the lowest that is good enough, and why.
 *
 * <p>The curve is taken when two things hold: its residuals are so much smaller that chance does it once in a hundred at most (F
 * test of the added term), and the gain is worth a curve. R² decides nothing: it is near 1 for every load cell.
 *
 * @param recommended 1 or 2
 * @param settled whether the readings could decide it
 * @param fRatio what the added term takes off the sum of squares, over the curve's residual variance; empty without a curve
 * @param probability of so great a ratio when the true response is a straight line
 * @param sdRatio residual sd of the line over that of the curve
 * @param because whole sentences
 */
record DegreeChoice(
        int recommended,
        boolean settled,
        OptionalDouble fRatio,
        OptionalDouble probability,
        OptionalDouble sdRatio,
        String because) {
    /** Chosen: the customary stricter level; a needless curve is worse extrapolated than a needless line. */
    private static final double SIGNIFICANT = 0.01;
    /** Chosen: a residual sd smaller by less than this is not worth a curve. */
    private static final double WORTH = 1.2;
    /** Chosen: with fewer loads a parabola has next to nothing left to miss. */
    static final int LEAST_LOADS = 4;

    /** @param resolution one step of the last digit of the counts */
    static DegreeChoice of(
            Shape line, Optional<Shape> curve, int loads, double least, double greatest, double resolution) {
        if (curve.isEmpty() || loads < LEAST_LOADS) {
            return unsettled(
                    "At " + loads + " loads nobody can tell a line from a curve: the line is the lowest degree.");
        }
        ResponseFit straight = line.fit();
        ResponseFit bent = curve.get().fit();
        if (line.greatestResidual() <= resolution / 2) {
            return without(1, "No reading lies further from the straight line than half a step of its last digit.");
        }
        if (bent.residualSquares() == 0) {
            return without(2, "Every reading lies on the curve exactly, and not on the line.");
        }
        double ratio = (straight.residualSquares() - bent.residualSquares())
                * bent.degreesOfFreedom()
                / bent.residualSquares();
        double probability =
                1 - new FDistribution(1, bent.degreesOfFreedom()).cumulativeProbability(Math.max(0, ratio));
        double gain = straight.residualSd() / bent.residualSd();
        boolean real = probability <= SIGNIFICANT;
        boolean rises = bent.rises(least, greatest);
        int degree = real && gain >= WORTH && rises ? 2 : 1;
        String because = degree == 2
                ? curveWords(gain, ratio, line)
                : real && gain >= WORTH
                        ? "A curve would fit better, but it does not rise from the least to the greatest load: it cannot be used."
                        : lineWords(gain, ratio, probability, real, line);
        return new DegreeChoice(
                degree,
                true,
                OptionalDouble.of(ratio),
                OptionalDouble.of(probability),
                OptionalDouble.of(gain),
                because);
    }

    private static String curveWords(double gain, double ratio, Shape line) {
        return "The straight line is not good enough, however near 1 its R² (" + rSquared(line)
                + ") is: its residuals are "
                + Digits.three(gain)
                + " times those of a curve with F², which chance does less than once in a hundred (F "
                + Digits.three(ratio) + ")." + runs(line);
    }

    private static String lineWords(double gain, double ratio, double probability, boolean real, Shape line) {
        String compared = "its residuals are " + Digits.three(gain) + " times those of a curve with F², ";
        String why = real
                ? compared + "which is beyond chance but not worth a curve"
                : compared + "no more than chance makes them (F " + Digits.three(ratio) + ", " + "probability "
                        + Digits.three(probability) + ")";
        return "The straight line is good enough: " + why + "." + runs(line);
    }

    private static String runs(Shape line) {
        RunsTest runs = line.runs();
        String word = runs.probability() <= 0.05 ? "long runs, as a bend leaves them" : "no order";
        return " In the order of loads its residuals change sides " + Math.max(0, runs.runs() - 1) + " times at "
                + (runs.above() + runs.below()) + " loads: " + word + ".";
    }

    private static String rSquared(Shape line) {
        return String.format(Locale.ROOT, "%.6f", line.fit().rSquared());
    }

    private static DegreeChoice unsettled(String because) {
        return new DegreeChoice(
                1, false, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), because);
    }

    private static DegreeChoice without(int degree, String because) {
        return new DegreeChoice(
                degree, true, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), because);
    }
}
