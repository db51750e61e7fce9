package tautlog.fatigue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class TurningPointsTest {
    private static List<String> points(double gate, double... history) {
        List<String> points = new ArrayList<>();
        TurningPoints turning = new TurningPoints(gate, (value, index) -> points.add((int) value + "@" + index));
        for (int i = 0; i < history.length; i++) {
            turning.accept(history[i], i);
        }
        turning.finish();
        return points;
    }

    @Test
    void leavesOutWhatMovesLessThanTheGate() {
        assertEquals(List.of("0@0", "10@3", "5@5"), points(5, 0, 6, 4, 10, 8, 5));
        assertEquals(List.of("0@0", "5@1", "0@2", "5@3"), points(5, 0, 5, 0, 5));
    }

    @Test
    void takesTheEarliestOfEqualExtremes() {
        assertEquals(List.of("0@0", "9@1", "0@3"), points(5, 0, 9, 9, 0, 0));
    }

    @Test
    void beginsWithTheLeastBeforeTheFirstRise() {
        assertEquals(List.of("3@0", "1@2", "9@3"), points(5, 3, 4, 1, 9));
        assertEquals(List.of("3@0", "5@1", "0@3"), points(5, 3, 5, 4, 0));
        assertEquals(List.of("3@0", "9@1"), points(5, 3, 9));
    }

    @Test
    void endsWithTheExtremumAndTheLastValue() {
        assertEquals(List.of("0@0", "9@1", "7@2"), points(5, 0, 9, 7));
        assertEquals(List.of("0@0", "9@1"), points(5, 0, 9, 9));
    }

    @Test
    void givesOnePointForOneValueAndNoneForNone() {
        assertEquals(List.of("4@0"), points(5, 4));
        assertEquals(List.of(), points(5));
        assertEquals(List.of("4@0", "5@3"), points(5, 4, 6, 3, 5));
    }

    @Test
    void refusesAGateThatIsNotAboveZero() {
        assertThrows(IllegalArgumentException.class, () -> points(0, 1));
    }

    @Property(tries = 300)
    void givesTheSamePointsWhenBoundsAreTakenWherePossible(
            @ForAll @Size(max = 60) List<@IntRange(min = 0, max = 30) Integer> values, @ForAll int seed) {
        double[] history = values.stream().mapToDouble(Integer::doubleValue).toArray();
        List<String> points = new ArrayList<>();
        TurningPoints turning = new TurningPoints(7, (value, index) -> points.add((int) value + "@" + index));
        Random random = new Random(seed);
        for (int i = 0; i < history.length; ) {
            int n = Math.min(history.length - i, 1 + random.nextInt(8));
            int low = i;
            int high = i;
            for (int k = i; k < i + n; k++) {
                low = history[k] < history[low] ? k : low;
                high = history[k] > history[high] ? k : high;
            }
            if (!turning.takeAll(history[low], low, history[high], high, history[i + n - 1], i + n - 1)) {
                for (int k = i; k < i + n; k++) {
                    turning.accept(history[k], k);
                }
            }
            i += n;
        }
        turning.finish();
        assertEquals(points(7, history), points);
    }
}
