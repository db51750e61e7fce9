package tautlog.logger.simulate.instrument;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * The uneven turn behind a cardan joint, at the level of pulses, against tables of ω2/ω1 = cos β / (1 − sin²β cos²θ1)
 * (kinematics of the universal joint; the tables' first lines say where they come from).
 */
final class PulseSensorTest {
    private static final int FINE = 720;

    private static List<String[]> rows(String csv) throws IOException {
        try (InputStream in = Objects.requireNonNull(PulseSensorTest.class.getResourceAsStream(csv))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1) // names of the columns
                    .map(line -> line.split(","))
                    .toList();
        }
    }

    /** Turns before the joint at which each pulse of one turn and the one after it come. */
    private static double[] turnsOfPulses(int perTurn, double jointDegrees) {
        PulseSensor sensor = new PulseSensor(perTurn, jointDegrees, 0, 1);
        double[] turns = new double[perTurn + 1];
        for (int i = 0; i <= perTurn; i++) {
            turns[i] = sensor.nextAtTurns();
            sensor.pass();
        }
        return turns;
    }

    @Test
    void theFastestAndTheSlowestPulsesAreThoseOfTheJoint() throws IOException {
        for (String[] row : rows("cardan_nonuniformity.csv")) {
            double[] turns = turnsOfPulses(FINE, Double.parseDouble(row[0]));
            double least = Double.MAX_VALUE;
            double greatest = 0;
            for (int i = 0; i < FINE; i++) {
                double ratio = 1.0 / FINE / (turns[i + 1] - turns[i]);
                least = Math.min(least, ratio);
                greatest = Math.max(greatest, ratio);
            }
            assertEquals(Double.parseDouble(row[1]), least, 2e-5); // a pulse averages over half a degree
            assertEquals(Double.parseDouble(row[2]), greatest, 2e-5);
        }
    }

    @Test
    void theTurnBehindTheJointFollowsTheTableAngleByAngle() throws IOException {
        for (String[] row : rows("cardan_ratio_vs_angle.csv")) {
            double[] turns = turnsOfPulses(FINE, Double.parseDouble(row[0]));
            double angle = Double.parseDouble(row[1]) / 360;
            int i = 0;
            while (i < FINE - 1 && (turns[i] + turns[i + 1]) / 2 < angle) {
                i++;
            }
            double ratio = 1.0 / FINE / (turns[i + 1] - turns[i]);
            assertEquals(Double.parseDouble(row[2]), ratio, 0.004); // the nearest half degree
        }
    }

    @Test
    void overOneWholeTurnEveryPulseIsOneTurnLater() {
        PulseSensor sensor = new PulseSensor(6, 12, 0.05, 9);
        double[] first = new double[6];
        for (int i = 0; i < 18; i++) {
            if (i < 6) {
                first[i] = sensor.nextAtTurns();
            }
            assertEquals(first[i % 6] + Math.floorDiv(i, 6), sensor.nextAtTurns(), 1e-12);
            sensor.pass();
        }
    }
}
