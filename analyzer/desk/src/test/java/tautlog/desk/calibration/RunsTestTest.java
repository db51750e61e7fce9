package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RunsTestTest {
    @Test
    void countsStretchesOnOneSideAndPassesOverWhatLiesOnTheFit() {
        RunsTest runs = RunsTest.of(List.of(-1.0, -2.0, 0.0, -1.0, 3.0, 1.0, 0.0, -4.0));

        assertEquals(new RunsTest(3, 2, 4), runs);
    }

    @Test
    void agreesWithListingAllOrders() {
        for (int above = 1; above <= 6; above++) {
            for (int below = 1; below <= 6; below++) {
                for (int most = 2; most <= above + below; most++) {
                    double listed = listed(above, below, most);

                    assertEquals(listed, new RunsTest(most, above, below).probability(), 1e-12);
                }
            }
        }
    }

    /** The share of all orders of so many residuals above and below that have {@code most} runs or fewer. */
    private static double listed(int above, int below, int most) {
        int orders = 0;
        int few = 0;
        int n = above + below;
        for (int bits = 0; bits < 1 << n; bits++) {
            if (Integer.bitCount(bits) != above) {
                continue;
            }
            List<Double> sides = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                sides.add((bits >> i & 1) == 1 ? 1.0 : -1.0);
            }
            orders++;
            few += RunsTest.of(sides).runs() <= most ? 1 : 0;
        }
        return (double) few / orders;
    }

    @Test
    void tellsNothingWhenAllLieOnOneSide() {
        assertEquals(1, new RunsTest(1, 5, 0).probability());
        assertEquals(1, RunsTest.of(List.of()).probability());
    }
}
