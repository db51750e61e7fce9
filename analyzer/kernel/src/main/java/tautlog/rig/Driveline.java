package tautlog.rig;

import java.util.OptionalDouble;

/**
 * Drum, gear and shaft between the line and the tractor. Figures in double: nothing here decides a finding.
 *
 * @param barrelRadiusMetres of the bare drum
 * @param ropeDiameterMetres adds to the radius layer by layer
 * @param layers on the full drum, 1 or more
 * @param ratio shaft turns per drum turn
 * @param efficiency of the gear, above 0 to 1
 * @param ratedTorqueNewtonMetres of the shaft
 * @param ratedRpm of the shaft
 * @param jointAngleDegrees at which the joint works, empty when the rig does not say
 * @param jointRatedAngleDegrees for which it is rated, empty when the rig does not say
 */
public record Driveline(
        double barrelRadiusMetres,
        double ropeDiameterMetres,
        int layers,
        double ratio,
        double efficiency,
        double ratedTorqueNewtonMetres,
        double ratedRpm,
        OptionalDouble jointAngleDegrees,
        OptionalDouble jointRatedAngleDegrees) {
    private static final double LEAST_JOINT_DEGREES = 3;

    /** Radius at which the rope runs on in {@code layer} (1 for the first), in metres. */
    public double layerRadiusMetres(int layer) {
        return barrelRadiusMetres + (layer - 0.5) * ropeDiameterMetres;
    }

    /** What a winch with this pull on the first layer pulls with the rope running on in {@code layer}, in newtons. */
    public double pullOnLayer(double ratedPullNewtons, int layer) {
        return ratedPullNewtons * layerRadiusMetres(1) / layerRadiusMetres(layer);
    }

    /** Torque at the shaft in newton metres, clutch engaged, rope running on in {@code layer}. */
    public double shaftTorque(double tensionNewtons, int layer) {
        return tensionNewtons * layerRadiusMetres(layer) / (ratio * efficiency);
    }

    /** The least {@link #shaftTorque} when the layer is not known: on the first. */
    public double leastShaftTorque(double tensionNewtons) {
        return shaftTorque(tensionNewtons, 1);
    }

    /** The greatest {@link #shaftTorque} when the layer is not known: on the last. With an unknown clutch it is "at most". */
    public double greatestShaftTorque(double tensionNewtons) {
        return shaftTorque(tensionNewtons, layers);
    }

    /** Power in kilowatts at this torque and speed: 2π n M / 60. */
    public static double powerKilowatts(double torqueNewtonMetres, double rpm) {
        return 2 * Math.PI * rpm / 60 * torqueNewtonMetres / 1000;
    }

    /**
     * How fast the joint wears at this torque and speed, in hours at its rating per hour: (M/M_rated)^(10/3) · (n/n_rated) ·
     * (max(β, 3°)/β_rated). Empty when the rig does not speak of the joint.
     *
     * <p>Relative wear only: sources disagree on exponent (3 or 10/3) and constants, so it promises no life in hours. From
     * memory of the textbook derivation, in which oscillation by ±β stands for a rotation and angles below 3° count as 3°.
     *
     * @param torqueNewtonMetres 0 or more
     */
    public OptionalDouble jointWear(double torqueNewtonMetres, double rpm) {
        if (jointAngleDegrees.isEmpty() || jointRatedAngleDegrees.isEmpty()) {
            return OptionalDouble.empty();
        }
        double angle = Math.max(jointAngleDegrees.getAsDouble(), LEAST_JOINT_DEGREES);
        double torqueShare = torqueNewtonMetres / ratedTorqueNewtonMetres;
        return OptionalDouble.of(
                wearAt(torqueShare) * (rpm / ratedRpm) * (angle / jointRatedAngleDegrees.getAsDouble()));
    }

    /** A share of the rated torque to the power of 10/3. */
    public static double wearAt(double torqueShare) {
        return torqueShare * torqueShare * torqueShare * Math.cbrt(torqueShare);
    }
}
