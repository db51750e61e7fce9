package tautlog.desk.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import tautlog.calibration.FitQuality;

/**
 * How far, with a coverage of 95 %, a single steady reading may be from the true static load.
 *
 * <p>Standard uncertainties: of the fitted response at that load (from the covariance), of one reading (residual sd),
 * of its resolution (step/√12), of the reference loads (half their expanded uncertainty); combined as squares, times t for the effective degrees of freedom (Welch and
 * Satterthwaite; JCGM 100:2008, G.4). What the readings cannot tell is left out, and said.
 */
final class ExpandedUncertainty {
    static final double COVERAGE = 0.95;

    private final ResponseFit fit;
    private final FitQuality quality;

    ExpandedUncertainty(ResponseFit fit, FitQuality quality) {
        this.fit = fit;
        this.quality = quality;
    }

    /**
     * At one load.
     *
     * @param plusMinusNewtons half the interval
     * @param factor by which the standard uncertainty was multiplied
     */
    record At(double newtons, double plusMinusNewtons, double factor) {
        /** Of the load; empty at no load. */
        OptionalDouble share() {
            return newtons > 0 ? OptionalDouble.of(plusMinusNewtons / newtons) : OptionalDouble.empty();
        }
    }

    At at(double newtons) {
        double response = quality.responseSdCounts(newtons);
        double reading = quality.residualSdCounts();
        double fitted = Math.hypot(response, reading) / Math.abs(fit.slope(newtons));
        double reference = quality.referencePercent().orElse(0) / 200 * newtons;
        double rounded = quality.roundingSdCounts() / Math.abs(fit.slope(newtons));
        double combined = Math.hypot(Math.hypot(fitted, rounded), reference);
        double factor = t(effectiveFreedom(fitted, combined));
        return new At(newtons, factor * combined, factor);
    }

    /** That of the fit where the reference's share, known from many, is nothing; never fewer. */
    private double effectiveFreedom(double fitted, double combined) {
        double share = fitted == 0 ? 1 : Math.pow(combined / fitted, 4);
        return Math.min(1e6, quality.degreesOfFreedom() * share);
    }

    /** Two-sided. */
    static double t(double freedom) {
        return new TDistribution(freedom).inverseCumulativeProbability((1 + COVERAGE) / 2);
    }

    /** What no such interval holds, in words. */
    static List<String> leavesOut(FitQuality quality, Behaviour behaviour) {
        List<String> left = new ArrayList<>();
        if (quality.referencePercent().isEmpty()) {
            left.add("the uncertainty of the reference loads (give --reference-percent)");
        }
        if (behaviour.hysteresis().isEmpty()) {
            left.add("hysteresis (no load was come to both ways)");
        }
        if (behaviour.spreadCounts().isEmpty()) {
            left.add("repeatability (nothing was repeated)");
        }
        left.add("temperature, creep, a zero that moves, side loads");
        left.add("fast loads: shocks and jolts");
        return left;
    }

    /** Each load of the calibration. */
    List<At> atEach(List<LoadStep> steps) {
        return steps.stream().map(step -> at(step.newtons())).toList();
    }

    /** The greatest over all loads. */
    static Optional<At> greatest(List<At> all) {
        return all.stream().max(java.util.Comparator.comparingDouble(At::plusMinusNewtons));
    }
}
