package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;
import tautlog.sample.HookupSource;

/** An outing whose clock was never known: its moments are named by the outing and the seconds from its start. */
class UndatedIncidentTest {
    @TempDir
    static Path folder;

    private static Path undated;

    /** A dated day, and two outings of a board that never learned the time: 16 kN in the first, 18 kN in the second, 20.1 s from each start. */
    @BeforeAll
    static void records() throws Exception {
        SampleDay.write(folder);
        undated = folder.resolve("upper-landing_undated-1.tautlog");
        try (RecordingWriter recording = RecordingWriter.open(undated, "upper-landing")) {
            for (int boot = 8; boot <= 9; boot++) {
                ShortDay outing = ShortDay.begun(recording, boot);
                outing.hookup("straight", HookupSource.MARK);
                outing.hold(20, 120);
                outing.ramp(120, 2_000 * boot);
                outing.hold(3, 2_000 * boot);
                outing.ramp(2_000 * boot, 120);
                outing.hold(5, 120);
                outing.end();
            }
        }
    }

    private static String words(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void tellsOfTheOutingAskedForAndOfNoOther() {
        JsonObject second = Cases.json(undated, "21s", "--outing", "2", "--around", "5s");
        JsonObject first = Cases.json(undated, "21", "--outing", "1", "--around", "5s");

        assertTrue(second.get("at").isJsonNull());
        assertEquals(2, second.get("at_outing").getAsInt());
        assertEquals(21, second.get("at_outing_s").getAsDouble());
        assertEquals("readings", second.getAsJsonObject("found").get("state").getAsString());
        assertEquals(18_000, greatest(second).get("peak_n").getAsDouble());
        assertEquals(20.1, greatest(second).get("start_outing_s").getAsDouble(), 0.1);
        assertEquals(16_000, greatest(first).get("peak_n").getAsDouble());
        assertEquals(1, second.getAsJsonArray("overloads").size());
        assertEquals(0, comparable(second), "16 is less than nine tenths of 18");
        assertEquals(1, comparable(first), "the other outing");
    }

    private static int comparable(JsonObject incident) {
        return incident.getAsJsonObject("outing").getAsJsonArray("comparable").size();
    }

    private static JsonObject greatest(JsonObject incident) {
        return incident.getAsJsonObject("outing").getAsJsonObject("greatest");
    }

    @Test
    void saysThatNobodyKnowsTheDay(@TempDir Path desk) throws IOException {
        Path ledger = Files.writeString(
                desk.resolve("ledger.jsonl"),
                "{\"id\":\"a\",\"kind\":\"inspected\",\"at\":\"2026-05-10T12:00:00Z\",\"gear\":\"choker\",\"by\":\"owner\",\"result\":\"back-in-service\"}\n");
        Path notes = Files.writeString(
                desk.resolve("notes.jsonl"), "{\"at\":\"2026-05-04T07:00:26Z\",\"text\":\"which day?\"}\n");
        Path pdf = desk.resolve("incident.pdf");

        Desk run = Desk.run(
                "incident",
                undated,
                "--outing",
                "2",
                "--at",
                "21s",
                "--ledger",
                ledger,
                "--notes",
                notes,
                "--pdf",
                pdf);

        assertEquals(0, run.code(), run.err());
        String words = words(run);
        assertTrue(words.contains("21.0 s into outing 2, which has no clock, and 30.0 s before and after it."), words);
        assertTrue(words.contains("nobody can say on which day it was"), words);
        assertTrue(words.contains("20.0 s into outing 2 Overload: 18.0 kN"), words);
        assertTrue(words.contains("2026-05-10 inspected: back in service"), words);
        assertTrue(words.contains("whether they were before that moment is not known"), words);
        assertTrue(words.contains("1 note of the file of notes not shown"), words);
        assertFalse(words.contains("which day?"), words);
        try (PDDocument paper = Loader.loadPDF(pdf.toFile())) {
            String text = new PDFTextStripper().getText(paper).replaceAll("[\\s\\u00A0]+", " ");
            assertTrue(text.contains("upper-landing_undated-1.tautlog · 21.0 s into outing 2"), text);
        }
    }

    @Test
    void secondsFromTheStartOfADatedOutingAreATime() {
        JsonObject bySeconds = Cases.json(folder, "27s", "--outing", "1", "--around", "5s");
        JsonObject byClock = Cases.json(folder, "2026-05-04T07:00:27Z", "--around", "5s");

        assertEquals(byClock, bySeconds);
    }

    @Test
    void saysWhereNothingIsAndWhichOutingsThereAre() {
        Desk beyond = Desk.run("incident", undated, "--outing", "1", "--at", "500s");
        Desk byClock = Desk.run("incident", folder, "--at", "2026-05-09T07:00:00Z");
        Desk none = Desk.run("incident", folder, "--outing", "9", "--at", "5s");

        assertEquals(3, beyond.code());
        assertTrue(words(beyond).contains("The last reading before it: 28.1 s into outing 1"), beyond.out());
        assertFalse(words(beyond).contains("Name one with --outing"), beyond.out());
        assertEquals(3, byClock.code());
        String undatedOnes = "Without a clock: --outing 2 (28.1 s, outing 1 of upper-landing_undated-1.tautlog);"
                + " --outing 3 (28.1 s, outing 2 of upper-landing_undated-1.tautlog).";
        assertTrue(byClock.err().contains(undatedOnes), byClock.err());
        assertTrue(words(byClock).contains("Name one with --outing"), byClock.out());
        assertEquals(2, none.code());
        assertTrue(none.err().contains("there is no outing 9 in the recordings given; they hold 3."), none.err());
        assertTrue(none.err().contains(undatedOnes), none.err());
        assertEquals(
                2,
                Desk.run("incident", undated, "--outing", "1", "--at", "2026-05-04T07:00:27Z")
                        .code());
    }

    @Test
    void theSecondsAreThoseOfTheReport() {
        JsonObject report = JsonParser.parseString(
                        Desk.run("report", folder, "--json").out())
                .getAsJsonObject();
        JsonObject overload = report.getAsJsonArray("overloads")
                .get(report.getAsJsonArray("overloads").size() - 1)
                .getAsJsonObject();

        assertTrue(overload.get("start").isJsonNull());
        JsonObject incident = Cases.json(
                folder,
                overload.get("outing_s").getAsString(),
                "--outing",
                overload.get("outing").getAsString(),
                "--around",
                "1s");
        assertEquals(overload.get("peak_n"), greatest(incident).get("peak_n"));
        assertEquals(18_000, overload.get("peak_n").getAsDouble());
    }
}
