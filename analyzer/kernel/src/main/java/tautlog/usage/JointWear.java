package tautlog.usage;

import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;

/** Wear of the driveline's joint between two shaft readings. Source: {@code FINDINGS.md}, Hours; the formula is {@link Driveline#jointWear}. */
final class JointWear {
    private static final double NANOS = 1e9;

    private final Curve curve;
    private final double ratedPullNewtons;
    private final double torqueSharePerNewton;
    private final double ratedRpm;
    private final double atRating;

    /** @param driveline with both angles of the joint */
    JointWear(Driveline driveline, Rig rig, Calibration calibration) {
        curve = calibration.curve();
        ratedPullNewtons = rig.ratedPullNewtons().doubleValue();
        torqueSharePerNewton = driveline.greatestShaftTorque(1) / driveline.ratedTorqueNewtonMetres();
        ratedRpm = driveline.ratedRpm();
        atRating = driveline
                .jointWear(driveline.ratedTorqueNewtonMetres(), ratedRpm)
                .orElseThrow();
    }

    /**
     * Nanoseconds at the rating, rounded, so that sums are exact.
     *
     * @param seconds between the readings, at most 1
     * @param samples 0 when the tension is not known: the winch's rated pull then stands for it
     * @param greatest count
     */
    long nanos(double seconds, double rpm, int samples, int greatest) {
        double newtons = samples == 0 ? ratedPullNewtons : Math.max(0, curve.newtons(greatest));
        double wear = Math.pow(newtons * torqueSharePerNewton, Driveline.WEAR_EXPONENT) * (rpm / ratedRpm) * atRating;
        return Math.round(seconds * wear * NANOS);
    }
}
