package tautlog.usage;

import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/** Wear of the driveline's joint between two shaft readings. Source: {@code FINDINGS.md}, Hours; the formula is {@link Driveline#jointWear}. */
final class JointWear {
    private static final double NANOS = 1e9;

    private final Driveline driveline;
    private final Calibration calibration;
    private final double ratedPullNewtons;

    /** @param driveline with both angles of the joint */
    JointWear(Driveline driveline, Rig rig, Calibration calibration) {
        this.driveline = driveline;
        this.calibration = calibration;
        ratedPullNewtons = rig.ratedPullNewtons().doubleValue();
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
        double wear =
                driveline.jointWear(driveline.greatestShaftTorque(newtons), rpm).orElseThrow();
        return Math.round(seconds * wear * NANOS);
    }
}
