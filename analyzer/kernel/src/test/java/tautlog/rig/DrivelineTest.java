package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;

class DrivelineTest {
    private static Driveline drum(double radius, double rope, int layers) {
        return new Driveline(radius, rope, layers, 14, 0.75, 1120, 540, OptionalDouble.of(8), OptionalDouble.of(5));
    }

    @Test
    void pullByLayerIsThatOfTheArmysManual() {
        List<CSVRecord> rows = ReferenceTable.rows("winch_pull_by_layer_published");
        assertEquals(5, rows.size());
        // only the ratio of rope to drum matters: 1/pull rises by 0.1007 of the first layer's each layer (TM figures)
        Driveline driveline = drum(1 - 0.1007 / 2, 0.1007, 5);
        for (CSVRecord row : rows) {
            double published = Double.parseDouble(row.get("max_line_pull_lb"));

            double pull = driveline.pullOnLayer(20_000, Integer.parseInt(row.get("layer")));

            assertEquals(published, pull, published * 0.001, row.toString());
        }
    }

    @Test
    void powerAndTorqueAgreeWithIndependentFigures() {
        for (CSVRecord row : ReferenceTable.rows("pto_torque")) {
            double kilowatts =
                    Double.parseDouble(row.get("power")) * (row.get("unit").equals("hp") ? 0.74569987 : 1);

            double power = Driveline.powerKilowatts(
                    Double.parseDouble(row.get("torque_Nm")), Double.parseDouble(row.get("rpm")));

            // torque is printed to 0.01 N m
            assertEquals(kilowatts, power, 0.0006, row.toString());
        }
    }

    @Test
    void torqueAtTheShaftLiesBetweenFirstAndLastLayer() {
        Driveline driveline = drum(0.09, 0.011, 4);

        // 10 kN on 95.5 mm is 955 N m at the drum; / (14 · 0.75) = 90.952 N m
        assertEquals(90.952, driveline.leastShaftTorque(10_000), 0.001);
        // last layer: 90 + 3.5 · 11 = 128.5 mm
        assertEquals(122.381, driveline.greatestShaftTorque(10_000), 0.001);
    }

    @Test
    void theJointWearsByTorqueSpeedAndAngle() {
        Driveline driveline = drum(0.09, 0.011, 4);

        // at its rated torque and speed only the angle counts: 8/5; 2^(10/3) is 10.0794
        assertEquals(1.6, driveline.jointWear(1120, 540).orElseThrow(), 1e-12);
        assertEquals(1.6 * 10.0794, driveline.jointWear(2240, 540).orElseThrow(), 0.001);
        assertEquals(0.8, driveline.jointWear(1120, 270).orElseThrow(), 1e-12);
    }

    @Test
    void lifeIsInverseToWearAsInTheTextbooksExample() {
        // textbook Lh = 1.5e6/(n b) (C/P)^(10/3), from memory: b = 3° 9332.7 h, b = 10° 2799.8 h at the same torque
        Driveline three = new Driveline(1, 1, 1, 1, 1, 100, 540, OptionalDouble.of(3), OptionalDouble.of(3));
        Driveline ten = new Driveline(1, 1, 1, 1, 1, 100, 540, OptionalDouble.of(10), OptionalDouble.of(3));
        Driveline flat = new Driveline(1, 1, 1, 1, 1, 100, 540, OptionalDouble.of(1), OptionalDouble.of(3));

        double ratio =
                ten.jointWear(50, 540).orElseThrow() / three.jointWear(50, 540).orElseThrow();

        assertEquals(9332.7 / 2799.8, ratio, 0.001);
        assertEquals(three.jointWear(50, 540), flat.jointWear(50, 540), "below 3° counts as 3°");
    }

    @Test
    void aCardanJointSwingsAsTheReferenceSays() {
        for (CSVRecord row : ReferenceTable.rows("cardan_ratio_vs_angle")) {
            double ratio = Cardan.ratio(
                    Double.parseDouble(row.get("joint_angle_deg")),
                    Double.parseDouble(row.get("input_angle_deg_from_yoke_in_plane")));

            assertEquals(Double.parseDouble(row.get("omega_out_over_omega_in")), ratio, 1e-9, row.toString());
        }
        for (CSVRecord row : ReferenceTable.rows("cardan_nonuniformity")) {
            double angle = Double.parseDouble(row.get("joint_angle_deg"));

            assertEquals(Double.parseDouble(row.get("nonuniformity_U_tan_sin")), Cardan.nonUniformity(angle), 1e-6);
            assertEquals(Double.parseDouble(row.get("ratio_min_cos")), Cardan.ratio(angle, 90), 1e-6);
            assertEquals(Double.parseDouble(row.get("max_rpm_at_540")), 540 * Cardan.ratio(angle, 0), 0.001);
        }
    }

    @Test
    void aRigWithDrumAndShaftHasADriveline() {
        Driveline driveline = Rigs.parsed(Rigs.exampleText()).driveline().orElseThrow();

        assertEquals(0.09, driveline.barrelRadiusMetres(), 1e-15);
        assertEquals(0.011, driveline.ropeDiameterMetres(), 1e-15);
        assertEquals(4, driveline.layers());
        assertEquals(OptionalDouble.of(8), driveline.jointAngleDegrees());
    }

    @Test
    void aRigWithoutADrumHasNone() {
        String text = RigText.of(RigText.gear("c", "chain", "wll = \"10 kN\""), "{ gear = \"c\" }");

        assertTrue(Rigs.parsed(text).driveline().isEmpty());
    }
}
