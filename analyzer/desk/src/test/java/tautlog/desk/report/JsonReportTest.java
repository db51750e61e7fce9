package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class JsonReportTest {
    /** Half a sample of 500 Hz, and the roundness of microseconds. */
    private static final double HALF_SAMPLE = 0.001001;

    private static JsonObject report;

    @BeforeAll
    static void reportsTheSampleDay(@TempDir Path folder) throws IOException {
        Desk run = Desk.run("report", SampleDay.write(folder), "--json");
        assertEquals(0, run.code(), run.err());
        report = JsonParser.parseString(run.out()).getAsJsonObject();
    }

    @Test
    void hasEveryKeyOfTheDocumentedExampleInItsOrder() throws IOException {
        // report-example.json is the example of DEVELOPERS.md, section report --json
        List<String> problems = new ArrayList<>();

        compare("", example(), report, problems);

        assertEquals(List.of(), problems);
    }

    private static JsonObject example() throws IOException {
        try (InputStream in = JsonReportTest.class.getResourceAsStream("report-example.json")) {
            assertNotNull(in);
            return JsonParser.parseString(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .getAsJsonObject();
        }
    }

    private static void compare(String path, JsonElement expected, JsonElement found, List<String> problems) {
        if (expected.isJsonObject()) {
            compareObjects(path, expected.getAsJsonObject(), found.getAsJsonObject(), problems);
        } else if (expected.isJsonArray()) {
            if (expected.getAsJsonArray().isEmpty()) {
                return; // documented as empty on a day that is whole
            }
            if (found.getAsJsonArray().isEmpty()) {
                problems.add(path + " has no element to compare");
                return;
            }
            for (JsonElement element : found.getAsJsonArray()) {
                compare(path + "[]", expected.getAsJsonArray().get(0), element, problems);
            }
        } else if (!expected.isJsonNull()
                && !found.isJsonNull()
                && !kind(expected).equals(kind(found))) {
            problems.add(path + " is " + kind(found) + ", documented is " + kind(expected));
        }
    }

    private static void compareObjects(String path, JsonObject expected, JsonObject found, List<String> problems) {
        List<String> shared = found.keySet().stream().filter(expected::has).toList();
        if (path.endsWith(".rejected")) {
            return; // its keys are the kinds that occurred
        }
        if (!shared.equals(List.copyOf(expected.keySet()))) {
            problems.add(path + " has the documented keys " + shared + ", documented are " + expected.keySet());
            return;
        }
        for (String key : shared) {
            compare(path + "." + key, expected.get(key), found.get(key), problems);
        }
    }

    private static String kind(JsonElement value) {
        return value.getAsJsonPrimitive().isBoolean()
                ? "boolean"
                : value.getAsJsonPrimitive().isNumber() ? "number" : "text";
    }

    private static JsonObject first(String list) {
        return report.getAsJsonArray(list).get(0).getAsJsonObject();
    }

    private static double secondsAfterStart(JsonObject object, String key) {
        Instant at = Instant.parse(object.get(key).getAsString());
        return (at.getEpochSecond() - SampleDay.START.getEpochSecond()) + at.getNano() / 1e9;
    }

    @Test
    void tellsWhenAndHowMuchTheLineSnapped() {
        JsonObject shock = first("shocks");

        assertEquals(15.028, secondsAfterStart(shock, "at"), HALF_SAMPLE);
        assertEquals(0.03, shock.get("rise_s").getAsDouble(), 1e-9);
        assertEquals(17_000, shock.get("peak_n").getAsDouble(), 8);
        assertTrue(shock.get("resolved").getAsBoolean());
        // 15 samples of rise: T / cos(pi / 60)
        assertEquals(
                shock.get("peak_n").getAsDouble() / Math.cos(Math.PI / 60),
                shock.get("peak_if_half_sine_n").getAsDouble(),
                0.01);
        assertEquals(16_900 / 0.03, shock.get("rise_n_per_s").getAsDouble(), 16 / 0.03);
        assertEquals(17_000.0 / 6_000, shock.get("factor").getAsDouble(), 0.01);
    }

    @Test
    void givesLoadAllowedProofAndBreakingOfEveryItemAtTheGreatest() {
        JsonArray overloads = report.getAsJsonArray("overloads");
        JsonObject worst = overloads.get(overloads.size() - 1).getAsJsonObject();
        JsonObject choker = item(worst, "choker");

        assertEquals("past-proof", worst.get("band").getAsString());
        assertEquals("choker", worst.get("governing").getAsString());
        assertEquals(SampleDay.LIMIT_NEWTONS, worst.get("limit_n").getAsDouble(), 0.001);
        assertEquals(worst.get("peak_n").getAsDouble(), choker.get("load_n").getAsDouble());
        assertEquals(SampleDay.LIMIT_NEWTONS, choker.get("allowed_n").getAsDouble(), 0.001);
        // chain: proof twice, breaking four times the working load limit (ASTM A413 practice)
        assertEquals(2 * SampleDay.LIMIT_NEWTONS, choker.get("proof_n").getAsDouble(), 0.001);
        assertEquals(4 * SampleDay.LIMIT_NEWTONS, choker.get("breaking_n").getAsDouble(), 0.001);
        assertEquals(
                worst.get("peak_n").getAsDouble() / SampleDay.LIMIT_NEWTONS,
                choker.get("share").getAsDouble(),
                1e-9);
        assertTrue(item(worst, "rope").get("proof_n").isJsonNull());
    }

    private static JsonObject item(JsonObject overload, String gear) {
        for (JsonElement item : overload.getAsJsonArray("items")) {
            if (item.getAsJsonObject().get("gear").getAsString().equals(gear)) {
                return item.getAsJsonObject();
            }
        }
        throw new AssertionError("no item " + gear + " in " + overload);
    }

    @Test
    void tellsPullsWithHookupShareAndHowTheyEnded() {
        JsonArray pulls = report.getAsJsonArray("pulls");
        JsonObject second = pulls.get(1).getAsJsonObject();
        JsonObject last = pulls.get(pulls.size() - 1).getAsJsonObject();

        assertEquals(4, pulls.size());
        assertTrue(second.get("cut_by_gap").getAsBoolean());
        assertEquals(28.998, secondsAfterStart(second, "end"), HALF_SAMPLE);
        assertEquals(2, second.get("overloads").getAsInt());
        assertEquals(1, second.get("shocks").getAsInt());
        assertEquals("round-the-corner", last.get("hookup").getAsString());
        assertTrue(last.get("held").getAsBoolean());
        assertEquals(
                last.get("mean_n").getAsDouble() * last.get("duration_s").getAsDouble(),
                last.get("impulse_ns").getAsDouble(),
                0.01);
    }

    @Test
    void tellsWhatTheShaftDidAfterTheDropAndLeavesUnknownSwitchesNull() {
        JsonObject drop = first("drops");

        assertEquals("ran-up", drop.get("shaft").getAsString());
        assertTrue(drop.get("stays_slack").getAsBoolean());
        assertTrue(drop.get("clutch").isJsonNull());
        assertTrue(drop.get("brake").isJsonNull());
    }

    @Test
    void countsTheGapAndSaysThatTheChainHolds() {
        JsonObject trust = report.getAsJsonObject("trust");

        assertEquals(1, trust.get("gaps").getAsInt());
        assertEquals(0.4, trust.get("gap_s").getAsDouble(), 1e-9);
        assertTrue(trust.get("chain_intact").getAsBoolean());
        assertTrue(trust.get("last_link").getAsString().matches("[0-9a-f]{64}"));
        assertTrue(trust.get("calibrated_at").isJsonNull());
    }

    @Test
    void metersHoursOfShaftAndPulls() {
        JsonObject hours = report.getAsJsonObject("hours");
        // SampleDay, tension above 1500 N: the ramps of 0.5 s cross it at 5.119 and 10.381 s, the snap at 15.003 s, the
        // gap
        // cuts at 29.000 and ends at 29.400 s, the fall crosses at 33.033 s, the ramps of 1 s at 40.184 and 49.825 s
        double pullSeconds = (10.381 - 5.119) + (29.000 - 15.003) + (33.033 - 29.400) + (49.825 - 40.184);
        double bandHours = 0;
        for (var band : hours.getAsJsonObject("band_h").entrySet()) {
            bandHours += band.getValue().getAsDouble();
        }

        assertEquals(pullSeconds, hours.get("pull_h").getAsDouble() * 3600, 0.05);
        assertEquals(hours.get("pull_h").getAsDouble(), bandHours, 1e-9);
        // the shaft turns from the start to 34 s and then stands; each stop is off by at most a reading and a second
        assertEquals(34.0 / 3600, hours.get("shaft_h").getAsDouble(), 1.2 / 3600);
        assertEquals(
                hours.get("pull_h").getAsDouble(),
                hours.get("winching_h").getAsDouble() + hours.get("held_h").getAsDouble(),
                1.0 / 3600);
        assertEquals(4, hours.get("pulls").getAsInt());
    }

    @Test
    void endsEveryTimeWithZ() {
        assertFalse(report.toString().contains("+00:00"));
        assertEquals(
                "2026-05-04T07:00:00.000000Z", first("recordings").get("start").getAsString());
        assertEquals(
                "2026-05-04T07:01:00.000000Z", first("recordings").get("end").getAsString());
    }

    @Test
    void saysNoWhatIfForTheRigOfTheDay() {
        assertTrue(report.getAsJsonArray("what_if").isEmpty());
    }
}
