package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.List;
import tautlog.calibration.FitQuality;
import tautlog.desk.uncertainty.AngleDoubt.End;
import tautlog.sample.Calibration;

/**
 * The doubt in P − w · S, P and S being two tensions of one outing within two seconds: w = 1 for a rise, w = 0 for P alone, and w = r for
 * the question whether P may be r times S.
 *
 * <p>An error that both share enters once and is partly or wholly taken away again. In newtons of the line:
 *
 * <pre>
 *   coefficients     √(a′ · covariance · a), a_i = n_P · F_P^i − w · n_S · F_S^i    n newtons per count, F the cell's force
 *   scatter          n_P and w · n_S counts, as of two readings                     the fit takes readings as independent
 *   reference loads  in proportion to P − w · S                                     a scale: nothing is left of it in a ratio
 *   angle            in proportion to P − w · S                                     taken to be the same for both
 *   zero             in proportion to 1 − w                                         the same for both: nothing left in a rise
 *   resolution       half a step of the counts, of each
 *   noise            of each on its own
 * </pre>
 *
 * @param angle taken to be the same for both
 * @param zero how far it may be off
 * @param noiseCounts standard deviation of one reading
 */
record TwoTensions(
        FitQuality fit,
        Calibration line,
        double readingPerTension,
        AngleDoubt angle,
        ZeroDoubt zero,
        double noiseCounts) {

    /**
     * One of the two.
     *
     * @param noise its noise / the noise of one reading: 1 for one reading, less for a median of many
     */
    record Side(double newtons, double noise) {
        static Side reading(double newtons) {
            return new Side(newtons, 1);
        }

        /** Of n or more normal readings a median scatters by at most √(π/2 / n) times as much as one, up to small terms. */
        static Side median(double newtons, long readings) {
            return new Side(newtons, Math.min(1, Math.sqrt(Math.PI / 2 / readings)));
        }
    }

    /** @param end of the interval that it is for */
    Budget budget(Side p, Side s, double w, End end) {
        double atP = newtonsPerCount(p.newtons());
        double atS = w * newtonsPerCount(s.newtons());
        double left = p.newtons() - w * s.newtons();
        double fitted =
                Math.hypot(coefficients(p.newtons(), s.newtons(), w), fit.scatterSdCounts() * Math.hypot(atP, atS));
        List<Part> parts = new ArrayList<>();
        parts.add(Part.normal(Cause.CALIBRATION, fitted));
        parts.add(Part.normal(
                Cause.REFERENCE_LOADS, Math.abs(left) * fit.referencePercent().orElse(0) / 200));
        parts.addAll(angle.parts(left, end));
        parts.add(Part.bound(Cause.ZERO, Math.abs(1 - w) * zero.boundNewtons()));
        parts.add(Part.rectangle(Cause.ZERO, Math.abs(1 - w) * zero.wanderNewtons()));
        parts.add(Part.rectangle(Cause.RESOLUTION, atP * fit.readingStepCounts() / 2));
        parts.add(Part.rectangle(Cause.RESOLUTION, Math.abs(atS) * fit.readingStepCounts() / 2));
        parts.add(Part.normal(Cause.NOISE, noiseCounts * Math.hypot(p.noise() * atP, s.noise() * atS)));
        return new Budget(parts, fit.degreesOfFreedom(), fitted);
    }

    /** Standard deviation, in newtons of the line, of what the fitted coefficients leave in P − w · S. */
    private double coefficients(double p, double s, double w) {
        int n = fit.degree() + 1;
        double[] a = new double[n];
        for (int i = 0; i < n; i++) {
            a[i] = newtonsPerCount(p) * Math.pow(p * readingPerTension, i)
                    - w * newtonsPerCount(s) * Math.pow(s * readingPerTension, i);
        }
        return fit.coefficientsSd(a);
    }

    /** Newtons of the line for one count, at this tension. */
    double newtonsPerCount(double newtons) {
        return line.newtonsPerCount().doubleValue() / (1 + 2 * line.curvature().doubleValue() * newtons);
    }

    /** The greatest tension that the calibration proved. */
    double greatestProven() {
        return fit.greatestNewtons() / readingPerTension * (1 - 1e-9);
    }
}
