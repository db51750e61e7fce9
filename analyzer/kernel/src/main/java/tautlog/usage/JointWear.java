package tautlog.usage;

import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * Wear of the driveline's joint between two shaft readings, as hours at its rating. Source: {@code FINDINGS.md}, Hours:
 * Δt · (M/M_rated)^(10/3) · (n/n_rated) · (max(β, 3°)/β_rated). Relative wear only: no life in hours follows from it.
 */
final class JointWear {
    private static final double EXPONENT = 10.0 / 3.0;
    private static final double LEAST_ANGLE_DEGREES = 3;
    private static final double NANOS = 1e9;

    private final Driveline driveline;
    private final Calibration calibration;
    private final double ratedPullNewtons;
    private final double angleFactor;

    /** @param driveline with both angles of the joint */
    JointWear(Driveline driveline, Rig rig, Calibration calibration) {
        this.driveline = driveline;
        this.calibration = calibration;
        ratedPullNewtons = rig.ratedPullNewtons().doubleValue();
        double angle = Math.max(driveline.jointAngleDegrees().orElseThrow(), LEAST_ANGLE_DEGREES);
        angleFactor = angle / driveline.jointRatedAngleDegrees().orElseThrow();
    }

    /**
     * Nanoseconds at the rating, rounded, so that sums are exact.
     *
     * @param seconds between the readings, at most 1
     * @param samples 0 when the tension is not known: the winch's rated pull then stands for it
     * @param greatest count
     */
    long nanos(double seconds, double rpm, int samples, int greatest) {
        double newtons = samples == 0 ? ratedPullNewtons : Math.max(0, calibration.newtons(greatest));
        double torque = driveline.shaftTorque(newtons, driveline.layers()) / driveline.ratedTorqueNewtonMetres();
        double wear = seconds * Math.pow(torque, EXPONENT) * (rpm / driveline.ratedRpm()) * angleFactor;
        return Math.round(wear * NANOS);
    }
}
