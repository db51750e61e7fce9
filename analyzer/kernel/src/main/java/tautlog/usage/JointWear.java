package tautlog.usage;

import tautlog.detect.GreatestCount;
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
    /** Up to this count the wear of a second at up to twice the rated speed rounds to nothing. */
    private final int wearlessUpTo;

    /** @param driveline with both angles of the joint */
    JointWear(Driveline driveline, Rig rig, Calibration calibration) {
        curve = calibration.curve();
        ratedPullNewtons = rig.ratedPullNewtons().doubleValue();
        torqueSharePerNewton = driveline.greatestShaftTorque(1) / driveline.ratedTorqueNewtonMetres();
        ratedRpm = driveline.ratedRpm();
        atRating = driveline
                .jointWear(driveline.ratedTorqueNewtonMetres(), ratedRpm)
                .orElseThrow();
        wearlessUpTo = wearlessUpTo();
    }

    private int wearlessUpTo() {
        long low = Integer.MIN_VALUE;
        long high = Integer.MAX_VALUE;
        while (low < high) {
            long middle = Math.floorDiv(low + high + 1, 2);
            if (nanos(1, 2 * ratedRpm, curve.newtons((int) middle)) == 0) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return (int) low;
    }

    /**
     * Nanoseconds at the rating, rounded, so that sums are exact.
     *
     * @param seconds between the readings, at most 1
     * @param samples 0 when the tension is not known: the winch's rated pull then stands for it
     */
    long nanos(double seconds, double rpm, int samples, GreatestCount greatest) {
        if (samples == 0) {
            return nanos(seconds, rpm, ratedPullNewtons);
        }
        return isWearless(rpm, greatest.atMost()) ? 0 : nanos(seconds, rpm, curve.newtons(greatest.exactly()));
    }

    /** Whether a time of at most 1 s at up to that speed, with counts up to {@code atMost}, surely rounds to nothing. */
    boolean isWearless(double rpm, int atMost) {
        return atMost <= wearlessUpTo && rpm <= 2 * ratedRpm;
    }

    private long nanos(double seconds, double rpm, double newtons) {
        double share = Math.max(0, newtons) * torqueSharePerNewton;
        double wear = Driveline.wearAt(share) * (rpm / ratedRpm) * atRating;
        return Math.round(seconds * wear * NANOS);
    }
}
