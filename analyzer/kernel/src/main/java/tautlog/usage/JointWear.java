package tautlog.usage;

import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;

/** Wear of the driveline's joint between two shaft readings. Source: {@code FINDINGS.md}, Hours; the formula is {@link Driveline#jointWear}. */
final class JointWear {
    private static final double NANOS = 1e9;
    private final Driveline driveline;
    private final Curve curve;
    private final double ratedPullNewtons;
    /** Wear at the rated speed for the counts met last: the power in it is what costs. */
    private final double[] wears = new double[CountMemory.PLACES];

    private final CountMemory counts = new CountMemory();

    /** @param driveline with both angles of the joint */
    JointWear(Driveline driveline, Rig rig, Calibration calibration) {
        this.driveline = driveline;
        curve = calibration.curve();
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
        double atRatedSpeed = samples == 0 ? wear(ratedPullNewtons) : wear(greatest);
        return Math.round(seconds * (atRatedSpeed * (rpm / driveline.ratedRpm())) * NANOS);
    }

    private double wear(int count) {
        int place = CountMemory.placeOf(count);
        if (!counts.holds(count)) {
            counts.remember(count);
            wears[place] = wear(Math.max(0, curve.newtons(count)));
        }
        return wears[place];
    }

    private double wear(double newtons) {
        return driveline
                .jointWear(driveline.greatestShaftTorque(newtons), driveline.ratedRpm())
                .orElseThrow();
    }
}
