package tautlog.fatigue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Source of the expected cycles: {@code src/test/resources/tautlog/fatigue/README.md}. */
class RainflowTest {
    /** Sines and cosines differ between maths libraries in their last digits. */
    private static final double TOLERANCE = 1e-12;

    private record Counted(double range, double mean, double count, long start, long end) {}

    private static List<Counted> count(double... history) {
        List<Counted> cycles = new ArrayList<>();
        Rainflow.count(
                history,
                (from, to, start, end, halves) ->
                        cycles.add(new Counted(Math.abs(to - from), (from + to) / 2, halves / 2.0, start, end)));
        return cycles;
    }

    private static List<Counted> published(String name) {
        try (var stream = RainflowTest.class.getResourceAsStream("rainflow_cycles.csv");
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .map(line -> line.split(",", -1))
                    .filter(cells -> cells[0].equals(name))
                    .map(c -> new Counted(
                            Double.parseDouble(c[1]),
                            Double.parseDouble(c[2]),
                            Double.parseDouble(c[3]),
                            Long.parseLong(c[4]),
                            Long.parseLong(c[5])))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void assertPublished(String name, double... history) {
        List<Counted> expected = published(name);
        List<Counted> actual = count(history);
        assertTrue(!expected.isEmpty(), name);
        assertEquals(expected.size(), actual.size());
        for (int i = 0; i < expected.size(); i++) {
            Counted e = expected.get(i);
            Counted a = actual.get(i);
            assertEquals(e.range, a.range, TOLERANCE);
            assertEquals(e.mean, a.mean, TOLERANCE);
            assertEquals(new Counted(0, 0, e.count, e.start, e.end), new Counted(0, 0, a.count, a.start, a.end));
        }
    }

    private static Map<Double, Double> totals(List<Counted> cycles) {
        Map<Double, Double> totals = new TreeMap<>();
        cycles.forEach(c -> totals.merge(c.range, c.count, Double::sum));
        return totals;
    }

    private static final double[] CASE_A = {-2, 1, -3, 5, -1, 3, -4, 4, -2};

    @Test
    void countsTheStandardsWorkedExample() {
        assertPublished("A", CASE_A);
        assertEquals(Map.of(3.0, 0.5, 4.0, 1.5, 6.0, 0.5, 8.0, 1.0, 9.0, 0.5), totals(count(CASE_A)));
    }

    @Test
    void putsTheStandardsExampleIntoBinsWhoseRightEdgeBelongsToThem() {
        // source: the same, five bins of 1.8
        double[] bins = new double[5];
        count(CASE_A).forEach(c -> bins[(int) Math.ceil(c.range / 1.8) - 1] += c.count);
        assertEquals(
                List.of(0.0, 0.5, 1.5, 0.5, 1.5), Arrays.stream(bins).boxed().toList());
    }

    @Test
    void leavesOutPointsThatAreNoReversals() {
        assertPublished("B", -1.5, 1, -3, 10, -1, 3, -8, 4, -2, 6, -1, -4, -8, 2, 1, -5, 0, 2.5, -4, 1, 0, 2, -0.5);
    }

    @Test
    void countsTwoSinesOfAThousandSamples() {
        double[] history = new double[1_001];
        for (int i = 0; i < history.length; i++) {
            history[i] = 0.8 * Math.sin(0.01 * Math.PI * i) + 0.2 * Math.sin(0.032 * Math.PI * i);
        }
        assertPublished("C", history);
    }

    @Test
    void countsReversalsWhoseResidueOtherMethodsTreatOtherwise() {
        double[] history = {4, 7, 2, 10, 5, 9, 3, 4, 2, 12, 5, 11, 1, 4, 3, 10, 6, 12, 4, 8, 1, 9, 4, 6};
        assertEquals(
                Map.of(1.0, 2.0, 2.0, 0.5, 3.0, 0.5, 4.0, 3.0, 5.0, 1.0, 6.0, 1.0, 8.0, 1.5, 10.0, 0.5, 11.0, 1.5),
                totals(count(history)));
    }

    @Test
    void countsThreeWavesOfTwoHundredSamples() {
        double[] history = new double[201];
        for (int i = 0; i < history.length; i++) {
            double t = 4.0 * i / 200;
            history[i] = 0.2 + 0.5 * Math.sin(t) + 0.2 * Math.cos(10 * t) + 0.2 * Math.sin(4 * t);
        }
        Map<Double, Double> expected = new TreeMap<>(Map.of(
                0.04258965150708488,
                0.5,
                0.10973439445727551,
                1.0,
                0.11294628078612906,
                0.5,
                0.2057106991158965,
                1.0,
                0.21467990941625242,
                1.0,
                0.4388985979776988,
                1.0,
                0.48305748051348263,
                0.5,
                0.5286423866535466,
                0.5,
                0.7809330293159786,
                0.5,
                1.4343610172143002,
                0.5));
        // ranges that differ only by rounding are one
        Map<Double, Double> rounded = new TreeMap<>();
        totals(count(history)).forEach((r, n) -> rounded.merge(Math.rint(r * 1e11) / 1e11, n, Double::sum));
        Map<Double, Double> wanted = new TreeMap<>();
        expected.forEach((r, n) -> wanted.merge(Math.rint(r * 1e11) / 1e11, n, Double::sum));
        assertEquals(wanted, rounded);
    }

    @Property(tries = 300)
    void countsAsManyHalfCyclesAsThereAreRangesBetweenTurningPoints(
            @ForAll @Size(max = 60) List<@IntRange(min = -20, max = 20) Integer> values) {
        double[] history = values.stream().mapToDouble(Integer::doubleValue).toArray();
        List<double[]> points = new ArrayList<>();
        TurningPoints turning = new TurningPoints(Double.MIN_VALUE, (v, i) -> points.add(new double[] {v, i}));
        for (int i = 0; i < history.length; i++) {
            turning.accept(history[i], i);
        }
        turning.finish();
        double halves = 2 * count(history).stream().mapToDouble(Counted::count).sum();
        assertEquals(Math.max(0, points.size() - 1), halves);
    }

    @Property(tries = 300)
    void countsTheWholeRangeOfTheHistoryOnce(
            @ForAll @Size(min = 2, max = 60) List<@IntRange(min = -20, max = 20) Integer> values) {
        double[] history = values.stream().mapToDouble(Integer::doubleValue).toArray();
        double range = Arrays.stream(history).max().orElseThrow()
                - Arrays.stream(history).min().orElseThrow();
        double greatest =
                count(history).stream().mapToDouble(Counted::range).max().orElse(0);
        assertEquals(range, greatest);
    }

    @Test
    void keepsItsStackAsDeepAsThereAreDistinctRanges() {
        // given a million reversals between whole numbers from 0 to 50
        Rainflow rainflow = new Rainflow((from, to, start, end, halves) -> {});
        Random random = new Random(1);
        double value = 25;
        int deepest = 0;
        for (int i = 0; i < 1_000_000; i++) {
            value = i % 2 == 0 ? value + 1 + random.nextInt(50 - (int) value + 1) : random.nextInt((int) value);
            rainflow.point(value, i);
            deepest = Math.max(deepest, rainflow.depth());
        }
        assertTrue(deepest <= 54, () -> "ranges of 1 to 51 fall strictly, one point more than ranges");
    }
}
