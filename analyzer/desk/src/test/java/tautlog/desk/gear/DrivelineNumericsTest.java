package tautlog.desk.gear;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.hipparchus.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.Test;
import tautlog.rig.Cardan;
import tautlog.rig.Driveline;

/** The formulas of the driveline against another library's quadrature. */
class DrivelineNumericsTest {
    private static final int MOST_EVALUATIONS = 2_000_000;

    /** Both shafts turn equally often: over a turn the mean ratio is 1, whatever the joint's angle. */
    @Test
    void aJointNeitherGainsNorLosesTurns() {
        for (double angle : new double[] {0, 3, 10, 30, 45, 60}) {
            double sum = new SimpsonIntegrator(1e-11, 1e-11, 3, 40)
                    .integrate(MOST_EVALUATIONS, degrees -> Cardan.ratio(angle, degrees), 0, 360);

            assertEquals(360, sum, 1e-7, angle + " degrees");
        }
    }

    /** Output angle: tan(out) = tan(in)/cos b, from 90° away; the ratio is its derivative. */
    @Test
    void theRatioAddsUpToTheOutputAngle() {
        double joint = 30;
        double input = 50;

        // with the input yoke in the plane of the shafts at 0 the output leads: tan(out) = tan(in) / cos(joint)
        double sum = new SimpsonIntegrator(1e-11, 1e-11, 3, 40)
                .integrate(MOST_EVALUATIONS, degrees -> Cardan.ratio(joint, degrees), 0, input);

        double output = Math.toDegrees(Math.atan(Math.tan(Math.toRadians(input)) / Math.cos(Math.toRadians(joint))));
        assertEquals(output, sum, 1e-7);
    }

    /** Torque that rises steadily to the rated one wears 3/13 of what the rated one does: ∫ t^(10/3) dt. */
    @Test
    void theJointsWearUnderARampIsItsIntegral() {
        Driveline line = new Driveline(0.09, 0.011, 4, 14, 0.75, 1120, 540, OptionalDouble.of(5), OptionalDouble.of(5));

        double worn = new SimpsonIntegrator(1e-10, 1e-10, 3, 40)
                .integrate(
                        MOST_EVALUATIONS,
                        share -> line.jointWear(share * 1120, 540).orElseThrow(),
                        0,
                        1);

        assertEquals(3.0 / 13, worn, 1e-8);
    }

    /** Pull times way at constant power: one turn of the drum on any layer takes the same work from the shaft. */
    @Test
    void powerAtTheShaftIsPullTimesRopeSpeedOverEfficiency() {
        Driveline line =
                new Driveline(0.09, 0.011, 4, 14, 0.75, 1120, 540, OptionalDouble.empty(), OptionalDouble.empty());
        for (int layer = 1; layer <= 4; layer++) {
            double speed = 2 * Math.PI * line.layerRadiusMetres(layer) * (540.0 / 14) / 60;

            double power = Driveline.powerKilowatts(line.shaftTorque(20_000, layer), 540);

            assertEquals(20 * speed / 0.75, power, 1e-9);
        }
    }
}
