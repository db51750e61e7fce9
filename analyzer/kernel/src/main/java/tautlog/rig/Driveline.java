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

    /** Radius at which the rope runs on in {@code layer} (1 for the first), in metres. */
    public double layerRadiusMetres(int layer) {
        return barrelRadiusMetres + (layer - 0.5) * ropeDiameterMetres;
    }

    /** Torque at the shaft in newton metres, clutch engaged, rope running on in {@code layer}. */
    public double shaftTorque(double tensionNewtons, int layer) {
        return tensionNewtons * layerRadiusMetres(layer) / (ratio * efficiency);
    }
}
