package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** The sample day's overload past the proof load: the same facts as in the report, in text and JSON. */
class IncidentFactsTest {
    private static final String AT = "2026-05-04T07:00:27Z";
    private static JsonObject incident;
    private static JsonObject report;
    private static String text;

    @BeforeAll
    static void reportsTheMoment(@TempDir Path folder) throws Exception {
        Path recording = SampleDay.write(folder, "day.tautlog", 7, 0, SampleDay.rigToml(), Cases.known());
        incident = Cases.json(recording, AT, "--around", "5s");
        report = JsonParser.parseString(Desk.run("report", recording, "--json").out())
                .getAsJsonObject();
        Desk run = Desk.run("incident", recording, "--at", AT, "--around", "5s", "--zone", "UTC");
        assertEquals(0, run.code(), run.err());
        text = run.out().replaceAll("\\s+", " ");
    }

    private static JsonObject outing() {
        return incident.getAsJsonObject("outing");
    }

    private static JsonObject greatest() {
        return outing().getAsJsonObject("greatest");
    }

    @Test
    void givesEachFindingOfTheWindowAsTheReportDoes() {
        Instant from = Instant.parse(AT).minusSeconds(5);
        Instant to = Instant.parse(AT).plusSeconds(5);
        for (String kind : List.of("pulls", "overloads", "shocks", "jolts", "drops", "stalls", "trouble")) {
            JsonArray expected = new JsonArray();
            for (JsonElement one : report.getAsJsonArray(kind)) {
                JsonObject entry = one.getAsJsonObject();
                String start = entry.get(entry.has("start") ? "start" : "at").getAsString();
                String end = entry.get(entry.has("end") ? "end" : entry.has("at") ? "at" : "start")
                        .getAsString();
                boolean within =
                        !Instant.parse(start).isAfter(to) && !Instant.parse(end).isBefore(from);
                if (within || List.of("overloads", "shocks", "jolts").contains(kind) && isOfThePull(end)) {
                    expected.add(one);
                }
            }
            assertEquals(expected, incident.getAsJsonArray(kind), kind);
        }
        assertEquals(2, incident.getAsJsonArray("overloads").size());
        assertEquals(1, incident.getAsJsonArray("shocks").size());
    }

    /** The first of the window's two pulls, from 15.0 s to the gap at 29.0 s, reaches out of it. */
    private static boolean isOfThePull(String end) {
        Instant at = Instant.parse(end);
        return !at.isBefore(Instant.parse("2026-05-04T07:00:15Z"))
                && !at.isAfter(Instant.parse("2026-05-04T07:00:29Z"));
    }

    @Test
    void takesTheGreatestFromTheReportsOverload() {
        JsonObject overload = report.getAsJsonArray("overloads").get(1).getAsJsonObject();

        for (String key : List.of("peak_n", "limit_n", "share", "governing", "start", "end", "hookup")) {
            assertEquals(overload.get(key), greatest().get(key), key);
        }
        JsonArray items = overload.getAsJsonArray("items");
        for (int i = 0; i < items.size(); i++) {
            JsonObject item = greatest().getAsJsonArray("items").get(i).getAsJsonObject();
            for (String key : items.get(i).getAsJsonObject().keySet()) {
                assertEquals(items.get(i).getAsJsonObject().get(key), item.get(key), key);
            }
        }
        assertEquals(
                overload.getAsJsonObject("uncertainty").get("low_n"),
                greatest().getAsJsonObject("uncertainty").get("low_n"));
    }

    @Test
    void answersTheFourQuestionsWithTheSameFiguresInTextAndJson() {
        JsonObject answer = incident.getAsJsonObject("answer");
        for (String key : List.of("what_broke", "by_how_much", "how_sure", "what_now")) {
            assertTrue(text.contains(answer.get(key).getAsString()), key + ": " + answer.get(key));
        }
        assertTrue(answer.get("what_broke").getAsString().contains("straight, 15.7 kN, set by choker"));
        assertTrue(answer.get("by_how_much").getAsString().contains("was 33.0 kN (32.0 to 34.1 with 95 %), 211 %"));
        assertTrue(answer.get("how_sure").getAsString().contains("Even its lower end is over the limit."));
        assertTrue(answer.get("what_now").getAsString().startsWith("choker: Take it out of service"));
        String alike = "It is one of 6 alike, and which of them was on is not known: all 6 are meant until it is.";
        assertTrue(answer.get("what_now").getAsString().contains(alike));
        assertEquals(2, text.split(alike, -1).length - 1, "in short, and under the gear: " + text);
        assertEquals(
                6,
                answer.getAsJsonArray("gear")
                        .get(0)
                        .getAsJsonObject()
                        .get("count")
                        .getAsInt());
        assertEquals(
                "past-proof",
                answer.getAsJsonArray("gear")
                        .get(0)
                        .getAsJsonObject()
                        .get("band")
                        .getAsString());
    }

    @Test
    void saysWhatTheReadingsAroundItWere() {
        JsonObject readings = outing().getAsJsonObject("readings");

        // 10 s at 500 a second, both ends, less 200 that are missing
        assertEquals(5_001 - 200, readings.get("samples").getAsInt());
        assertEquals(
                greatest().get("peak_n").getAsDouble(),
                readings.get("greatest_n").getAsDouble(),
                1e-9);
        JsonObject gap = readings.getAsJsonArray("gaps").get(0).getAsJsonObject();
        assertEquals(2.0, gap.get("from_s").getAsDouble(), 0.003);
        assertEquals(0.4, gap.get("to_s").getAsDouble() - gap.get("from_s").getAsDouble(), 1e-6);
    }

    /** Layers 1 and 4 of the example drum: 33 kN · 0.0955 m / 10.5 and · 0.1285 m / 10.5; the clutch is not known. */
    @Test
    void boundsTheShaftsTorqueOverLayersAndInterval() {
        JsonObject driveline = outing().getAsJsonObject("driveline");

        double high = greatest().getAsJsonObject("uncertainty").get("high_n").getAsDouble();
        assertEquals(0, driveline.get("torque_low_nm").getAsDouble());
        assertEquals(high * 0.1285 / 10.5, driveline.get("torque_high_nm").getAsDouble(), 1e-6);
        assertTrue(driveline.get("torque_is_at_most").getAsBoolean());
        assertTrue(driveline.get("clutch").isJsonNull());
        assertEquals(540, driveline.get("shaft_rpm").getAsDouble(), 45);
    }

    @Test
    void saysWhatTheCalibrationIsWorth() {
        JsonObject calibration = outing().getAsJsonObject("calibration");

        assertTrue(calibration.get("quality_known").getAsBoolean());
        assertEquals(
                "2026-04-20T08:00:00.000000Z", calibration.get("calibrated_at").getAsString());
        assertTrue(text.contains("20 April 2026"), text);
        assertFalse(text.contains("lies beyond them"), text);
        assertTrue(text.contains(calibration.get("sha256").getAsString()));
    }

    @Test
    void saysThatNothingWasProvenBeyondTheReferenceLoads(@TempDir Path folder) throws Exception {
        Path recording = SampleDay.write(folder, "day.tautlog", 7, 0, SampleDay.rigToml(), Cases.narrow());

        String words = Desk.run("incident", recording, "--at", AT).out().replaceAll("\\s+", " ");

        assertTrue(words.contains("the greatest pull here lies beyond them"), words);
        // rounded outwards, like the same figure beside the pull
        assertTrue(words.contains("33.0 kN (18.9 or more with 95 %)"), words);
        assertTrue(words.contains("the true greatest pull was 18.9 kN or more (no upper end is known)"), words);
    }

    @Test
    void printsTheRecordingsLastLinkAndThatNoneWasKeptElsewhere() {
        JsonObject integrity = outing().getAsJsonObject("integrity");

        assertTrue(integrity.get("intact").getAsBoolean());
        assertEquals(report.getAsJsonObject("trust").get("last_link"), integrity.get("last_link"));
        assertTrue(text.contains("No such link was given (--against)"));
        assertTrue(text.contains("No ledger was read"));
    }

    @Test
    void listsWhatHappenedInTheOrderOfTime() {
        List<String> kinds = incident.getAsJsonArray("timeline").asList().stream()
                .map(event -> event.getAsJsonObject().get("kind").getAsString())
                .toList();

        assertEquals(
                List.of("overload", "shock", "overload-ended", "jolt", "overload", "jolt", "greatest"),
                kinds.stream().filter(kind -> !kind.equals("stall")).toList().subList(1, 8));
        assertEquals(
                List.of("overload-ended", "pull-ended", "gap", "pull-began"),
                kinds.stream().filter(kind -> !kind.equals("stall")).toList().subList(8, 12));
        for (JsonElement event : incident.getAsJsonArray("timeline")) {
            String sentence = event.getAsJsonObject().get("text").getAsString();
            assertTrue(text.contains(sentence.substring(sentence.indexOf(' ') + 1)), sentence);
        }
    }

    @Test
    void neverCallsAnythingSafe() {
        assertFalse(
                text.toLowerCase(java.util.Locale.ROOT).replace("safety", "").contains("safe"), text);
        assertFalse(text.contains("OK"));
    }
}
