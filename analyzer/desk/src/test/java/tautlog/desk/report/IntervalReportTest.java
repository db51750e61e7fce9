package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;

/**
 * Every figure of a report with its interval. One count a newton, a scatter of 10 counts with 10 degrees of freedom: a reading is
 * known to 2.228 (Student's t, any printed table) · 10 = 22.28 N; slack of 12 s shows a zero and a noise of nothing.
 */
class IntervalReportTest {
    private static final double HALF = 22.28;
    /** What half a count, as a rectangle, adds at most. */
    private static final double ROUNDING = 0.05;
    /** 4700 lbf · 0.75, and twice that: chain of the example rig as a choker. */
    private static final double LIMIT = 15_679.98;

    private static final String TOML = """
            schema = 1
            b0_counts = 0.0
            b1_counts_per_newton = 1.0
            [fit]
            residual_sd_counts = 10.0
            degrees_of_freedom = 10
            least_load_n = 0.0
            greatest_load_n = 50000.0
            reference_percent = 0.0
            directions = "both"
            [fit.covariance]
            b0_b0 = 0.0
            b0_b1 = 0.0
            b1_b1 = 0.0
            """;

    @TempDir
    Path folder;

    private Path day(String name, Consumer<ShortDay> what) throws IOException, ConfigException {
        return ShortDay.write(folder, name, CellCalibration.parse("calibration.toml", TOML), day -> {
            day.hold(12, 0);
            what.accept(day);
            day.hold(40, 0); // proves the slack
        });
    }

    /** Slack, evenly up to {@code peak} newtons, then 5 kN: a shock of 51 samples from a foot of 740 N. */
    private Path snap(int peak) throws IOException, ConfigException {
        return day("snap-" + peak + ".tautlog", day -> {
            day.hold(0.1, 740);
            rise(day, 740, peak);
            day.hold(3, 5_000);
        });
    }

    /** To {@code peak} with the 51st sample; then a tenth of a second there. */
    private static void rise(ShortDay day, int foot, int peak) {
        day.ramp(foot, peak);
        day.hold(0.1, peak);
    }

    private static JsonObject first(Path recording, String list) {
        JsonObject report = JsonParser.parseString(
                        Desk.run("report", recording, "--json").out())
                .getAsJsonObject();
        return report.getAsJsonArray(list).get(0).getAsJsonObject();
    }

    private static String text(Path recording) {
        return Desk.run("report", recording).out().replaceAll("\\s+", " ");
    }

    private static void within(double low, double high, String unit, JsonObject interval, double tolerance) {
        assertEquals(low, interval.get("low" + unit).getAsDouble(), tolerance, interval.toString());
        assertEquals(high, interval.get("high" + unit).getAsDouble(), tolerance, interval.toString());
        assertFalse(interval.get("largest").isJsonNull());
    }

    @Test
    void jsonBoundsRateLevelAndFactorOfAShock() throws Exception {
        JsonObject shock = first(snap(14_000), "shocks");

        // 13.26 kN in 51 samples of 2 ms; between two readings it may have reached 14000 / cos(π / 204) = 14001.7
        double two = HALF * Math.sqrt(2);
        within(
                (13_260 - two) / (52 * 0.002),
                (13_261.66 + two) / (50 * 0.002),
                "_n_per_s",
                shock.getAsJsonObject("rise_rate_uncertainty"),
                2);
        within(5_000 - HALF, 5_000 + HALF, "_n", shock.getAsJsonObject("settled_uncertainty"), ROUNDING);
        // 2.8 ± 22.28 / 5000 · √(1 + 2.8²) = 0.01325, to first order
        within(2.78675, 2.8136, "", shock.getAsJsonObject("factor_uncertainty"), 0.0003);
    }

    @Test
    void jsonBoundsImpulseAndShareOfAPullAndSaysWhetherItMayBeOver() throws Exception {
        JsonObject near = first(snap(15_670), "pulls");
        JsonObject below = first(snap(14_000), "pulls");

        double seconds = near.get("duration_s").getAsDouble();
        double impulse = near.get("impulse_ns").getAsDouble();
        within(
                impulse - HALF * seconds,
                impulse + HALF * seconds,
                "_ns",
                near.getAsJsonObject("impulse_uncertainty"),
                ROUNDING * seconds);
        // half a sine adds 15670 / cos(π / 204) − 15670 = 1.86
        assertEquals(
                (15_671.86 + HALF) / LIMIT,
                near.getAsJsonObject("uncertainty").get("share_high").getAsDouble(),
                1e-5);
        assertTrue(near.get("may_be_over").getAsBoolean());
        assertFalse(below.get("may_be_over").getAsBoolean());
        assertTrue(text(snap(15_670)).contains("MAY BE OVER"));
        assertTrue(text(snap(15_670)).contains("May be over: in 1 pull"));
        assertFalse(text(snap(14_000)).toLowerCase(java.util.Locale.ROOT).contains("may be over"));
    }

    @Test
    void jsonBoundsTheRiseOfAJoltAndSaysWhetherItIsResolved() throws Exception {
        JsonObject slow = first(
                day("jolt.tautlog", day -> {
                    day.hold(1, 2_000);
                    rise(day, 2_000, 12_000);
                    day.hold(3, 5_000);
                }),
                "jolts");
        JsonObject fast = first(
                day("fast.tautlog", day -> {
                    day.hold(1, 2_000);
                    day.hold(0.1, 12_000);
                    day.hold(3, 5_000);
                }),
                "jolts");

        double two = HALF * Math.sqrt(2);
        within(10_000 - two, 10_001.42 + two, "_n", slow.getAsJsonObject("rise_uncertainty"), ROUNDING);
        assertTrue(slow.get("resolved").getAsBoolean());
        assertFalse(fast.get("resolved").getAsBoolean());
        assertTrue(fast.getAsJsonObject("rise_uncertainty").get("high_n").isJsonNull());
    }

    @Test
    void saysWhichBandIsNotRuledOut() throws Exception {
        // 31359.96 is the choker's proof load
        Path crosses = snap(31_345);
        Path below = snap(31_300);

        assertEquals("past-wll", first(crosses, "overloads").get("band").getAsString());
        assertEquals(
                "past-proof", first(crosses, "overloads").get("band_may_be").getAsString());
        assertEquals("past-wll", first(below, "overloads").get("band_may_be").getAsString());
        assertTrue(
                text(crosses).contains("choker (past-wll, may be past-proof): Take it out of service"), text(crosses));
        assertTrue(text(crosses).contains("Overload (may be past-proof): 31.3 kN (31.3 to 31.4)"), text(crosses));
        assertFalse(text(below).contains("may be past-"), text(below));
    }

    @Test
    void bandsOfAPeakWithoutAnUpperEndMayBeAny() throws Exception {
        Path fast = day("fast-snap.tautlog", day -> {
            day.hold(0.1, 17_000);
            day.hold(3, 5_000);
        });

        assertEquals(
                "past-breaking", first(fast, "overloads").get("band_may_be").getAsString());
        assertTrue(text(fast).contains("17.0 kN (16.9 or more)"), text(fast));
        assertTrue(text(fast).contains("May be overloaded: rope (may be past-"), text(fast));
    }

    @Test
    void saysThatNoBandIsRuledOutWhereNothingIsKnownOfTheCalibration() throws Exception {
        Path unknown = ShortDay.write(folder, "unknown.tautlog", day -> day.hold(3, 17_000));

        assertTrue(first(unknown, "overloads").get("band_may_be").isJsonNull());
        assertTrue(
                text(unknown).contains("choker (past-wll, how sure is not known): Take it out of service"),
                text(unknown));
        assertTrue(text(unknown).contains("so a worse band is not ruled out"), text(unknown));
        assertFalse(text(snap(31_345)).contains("how sure is not known"));
        assertTrue(first(unknown, "overloads")
                .getAsJsonObject("uncertainty")
                .get("low_n")
                .isJsonNull());
    }

    @Test
    void textGivesIntervalsAtForcesSharesFactorsAndMeans() throws Exception {
        String page = text(snap(14_000));

        assertTrue(
                page.contains("snapped tight to 14.0 kN (13.9 to 14.1) within 0.102 s, 89 % (89 to 90) of limit,"
                        + " 2.8 (2.7 to 2.9) times the 5.00 kN (4.97 to 5.03) it settled at"),
                page);
        assertTrue(page.contains("with 95 % 13.9–14.1"), page);
        assertTrue(page.contains("89–90 % mostly calibration"), page);
    }

    @Test
    void tableGivesBothEndsOfEveryForceAndShare() throws Exception {
        List<List<String>> rows = Desk.run("report", snap(31_345), "--csv", "-")
                .out()
                .lines()
                .map(line -> List.of(line.split(",", -1)))
                .toList();
        List<String> head = rows.get(0);

        assertEquals("brake", head.get(20), "old columns keep their place");
        List<String> shock = row(rows, "shock");
        assertEquals(
                List.of("31322", "31371", "4977", "5022"),
                cells(head, shock, "tension_low_n", "tension_high_n", "settled_low_n", "settled_high_n"));
        assertEquals(31_322.7 / LIMIT, number(head, shock, "share_low"), 1e-5);
        assertEquals(31_371 / LIMIT, number(head, shock, "share_high"), 1e-4);
        assertEquals(6.269, number(head, shock, "factor"), 1e-9);
        assertTrue(number(head, shock, "factor_low") < 6.269 && number(head, shock, "factor_high") > 6.269);
        List<String> overload = row(rows, "overload");
        assertEquals(List.of("past-proof"), cells(head, overload, "band_may_be"));
        List<String> pull = row(rows, "pull");
        assertEquals(List.of("true"), cells(head, pull, "may_be_over"));
        assertEquals(2 * HALF, number(head, pull, "mean_high_n") - number(head, pull, "mean_low_n"), 0.1);
        assertTrue(number(head, pull, "impulse_low_ns") < number(head, pull, "impulse_ns"));
    }

    private static List<String> row(List<List<String>> rows, String kind) {
        return rows.stream().filter(row -> row.get(0).equals(kind)).findFirst().orElseThrow();
    }

    private static double number(List<String> head, List<String> row, String column) {
        return Double.parseDouble(row.get(head.indexOf(column)));
    }

    private static List<String> cells(List<String> head, List<String> row, String... columns) {
        List<String> cells = new ArrayList<>();
        for (String column : columns) {
            cells.add(row.get(head.indexOf(column)).replaceAll("\\..*", ""));
        }
        return cells;
    }
}
