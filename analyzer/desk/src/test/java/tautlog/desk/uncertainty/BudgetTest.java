package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BudgetTest {
    private static double halfWidth(double freedom, double estimated, Part... parts) {
        return new Budget(List.of(parts), freedom, estimated).halfWidth();
    }

    @Test
    void aNormalPartAloneIsStudentsT() {
        // 97.5 % points of Student's t, any printed table: 2.228 for 10, 12.706 for 1 degree of freedom, 1.960 for many
        assertEquals(2.228, halfWidth(10, 1, Part.normal(Cause.CALIBRATION, 1)), 0.0005);
        assertEquals(12.706, halfWidth(1, 1, Part.normal(Cause.CALIBRATION, 1)), 0.4); // 1.01 degrees stand for 1
        assertEquals(1.960, halfWidth(5, 0, Part.normal(Cause.NOISE, 1)), 0.0005);
    }

    @Test
    void aRectangleAloneHoldsNineteenTwentiethsOfItsWidth() {
        assertEquals(95, halfWidth(5, 0, Part.rectangle(Cause.ZERO, 100)), 1e-9);
    }

    @Test
    void equalPartsGiveTheWidthThatRandomDrawsFind() {
        // given: normal of 50 N, rectangles of ±100 N and ±40 N
        double half = halfWidth(
                5,
                0,
                Part.normal(Cause.NOISE, 50),
                Part.rectangle(Cause.ZERO, 100),
                Part.rectangle(Cause.CELL_ANGLE, 40));
        Random random = new Random(1);
        // when
        int inside = 0;
        int draws = 400_000;
        for (int i = 0; i < draws; i++) {
            double error = 50 * random.nextGaussian()
                    + 100 * (2 * random.nextDouble() - 1)
                    + 40 * (2 * random.nextDouble() - 1);
            inside += Math.abs(error) <= half ? 1 : 0;
        }
        // then: 0.1 % is three standard deviations of such a count
        assertEquals(0.95, inside / (double) draws, 0.001);
    }

    @Test
    void namesThePartThatAloneWouldBeWidest() {
        // 100 · 0.95 < 49 · 1.96
        Budget budget = new Budget(List.of(Part.rectangle(Cause.ZERO, 100), Part.normal(Cause.NOISE, 49)), 5, 0);
        assertEquals(Optional.of(Cause.NOISE), budget.largest());
    }

    @Test
    void nothingInDoubtIsNoWidth() {
        Budget budget = new Budget(List.of(Part.rectangle(Cause.ZERO, 0)), 5, 0);
        assertEquals(0, budget.halfWidth());
        assertTrue(budget.largest().isEmpty());
    }
}
