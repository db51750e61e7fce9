package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.notes.Note;
import tautlog.desk.notes.NoteBook;

/** Moments at which there is nothing, what stands beside the recordings, and wrong usage. */
class IncidentCommandTest {
    private static final String AT = "2026-05-04T07:00:27Z";

    @TempDir
    static Path folder;

    private static Path recording;

    @BeforeAll
    static void recordsTwoDays() throws Exception {
        recording = SampleDay.write(folder);
        SampleDay.write(folder, "next.tautlog", 8, 86_400);
    }

    private static String words(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void saysThatNothingWasRecordedAndWhatIsNearest() {
        Desk run = Desk.run("incident", folder, "--at", "2026-05-04T12:00:00Z", "--zone", "UTC");

        assertEquals(3, run.code());
        assertTrue(run.err().contains("Nothing was being recorded at or near 2026-05-04T12:00:00Z"), run.err());
        String words = words(run);
        assertTrue(words.contains("Nobody knows: no outing was being recorded at that moment."), words);
        assertTrue(words.contains("4 May 2026 4 May 07:01:00.0 (outing 1 of upper-landing_2026-05-04.tautlog)"), words);
        assertTrue(words.contains("The first after it: 5 May 2026"), words);
        assertFalse(words.contains("33.0 kN"), words);
        assertTrue(words.contains("what it bore then was not measured. Keep the recordings as they are."), words);
        assertFalse(words.contains("a reading within a limit"), words);
    }

    @Test
    void tellsOfTheOutingThatEndedJustBefore() {
        String at = "2026-05-04T07:01:10Z";
        JsonObject incident = Cases.json(recording, at);
        Desk run = Desk.run("incident", recording, "--at", at, "--zone", "UTC");

        assertEquals(0, run.code(), run.err());
        assertEquals("no-outing", incident.getAsJsonObject("found").get("state").getAsString());
        assertTrue(
                words(run).contains("Nothing at that moment: no outing was being recorded at that moment."), run.out());
        assertTrue(words(run).contains("07:01:00.0 The outing ended: nothing after is known."), run.out());
        assertEquals(
                8_000,
                incident.getAsJsonObject("outing")
                        .getAsJsonObject("greatest")
                        .get("peak_n")
                        .getAsDouble(),
                10);
    }

    @Test
    void saysThatTheMomentLiesInAGap() {
        JsonObject found = Cases.json(recording, "2026-05-04T07:00:29.2Z").getAsJsonObject("found");
        Desk run =
                Desk.run("incident", recording, "--at", "2026-05-04T07:00:29.2Z", "--around", "0.1s", "--zone", "UTC");

        assertEquals(0, run.code(), run.err());
        assertEquals("gap", found.get("state").getAsString());
        assertEquals(
                "2026-05-04T07:00:28.998000Z",
                found.getAsJsonObject("before").get("at").getAsString());
        assertEquals(
                "2026-05-04T07:00:29.400000Z",
                found.getAsJsonObject("after").get("at").getAsString());
        assertTrue(words(run).contains("Nobody knows: the readings of that moment are missing"), run.out());
        assertTrue(words(run).contains("No reading lies in the time looked at."), run.out());
        assertTrue(
                words(run).contains("what it bore then was not measured. Keep the recording as it is, and"), run.out());
    }

    @Test
    void findsAReadingBesideTheGap() {
        JsonObject found = Cases.json(recording, "2026-05-04T07:00:28.99Z").getAsJsonObject("found");

        assertEquals("readings", found.get("state").getAsString());
    }

    @Test
    void listsWhatWasLikeItOnOtherDays() {
        JsonArray alike = Cases.json(folder, AT, "--around", "5s")
                .getAsJsonObject("outing")
                .getAsJsonArray("comparable");

        assertEquals(1, alike.size());
        assertEquals("overload", alike.get(0).getAsJsonObject().get("kind").getAsString());
        assertEquals(
                "2026-05-05T07:00:26",
                alike.get(0).getAsJsonObject().get("at").getAsString().substring(0, 19));
    }

    @Test
    void showsNotesOfTheWindowAndSurvivesATornEnd(@TempDir Path season) throws IOException {
        SampleDay.write(season);
        Files.writeString(
                season.resolve("notes.jsonl"),
                "{\"at\":\"2026-05-04T07:00:26Z\",\"text\":\"butt met a stump <b>\",\"by\":\"owner\"}\n"
                        + "{\"at\":\"2026-05-04T07:00:27Z\",\"text\":\"was \u202Etisti\u2066 \u009Bnot\"}\n"
                        + "{\"at\":\"2026-05-04T09:00:00Z\",\"text\":\"later\"}\n"
                        + "{\"at\":\"2026-05-04T07:00:27Z\",\"text\":\"the br");
        Files.write(season.resolve("notes.jsonl"), new byte[] {(byte) 0xC3}, StandardOpenOption.APPEND); // amid an ü

        String words = words(Desk.run("incident", season, "--at", AT, "--zone", "UTC"));

        assertTrue(words.contains("Note about 4 May 2026 07:00:26 by owner: butt met a stump <b>"), words);
        assertTrue(words.contains("was ?tisti? ?not"), "signs that turn the direction, and a terminal's own: " + words);
        assertFalse(words.contains("later"), words);
        assertTrue(words.contains("1 line of the file of notes could not be read as a note."), words);
    }

    @Test
    void tellsANoteThatWasAddedInTheEveningView(@TempDir Path season) throws IOException {
        SampleDay.write(season);
        Instant at = Instant.parse("2026-05-04T07:00:26Z");
        new NoteBook(season).add(Note.of("hillside", at, "overload", "thick choker was on", at));

        String words = words(Desk.run("incident", season, "--at", AT, "--zone", "UTC"));

        assertTrue(words.contains("Note about 4 May 2026 07:00:26: thick choker was on"), words);
    }

    @Test
    void holdsTheRecordingAgainstALinkThatWasKept(@TempDir Path drive) throws IOException {
        String link = Cases.json(recording, AT)
                .getAsJsonObject("outing")
                .getAsJsonObject("integrity")
                .get("last_link")
                .getAsString();
        Path good = drive.resolve("last-links.txt");
        Files.writeString(good, "2026-05-04T17:00:00Z " + recording.getFileName() + " " + link + "\n");
        Path bad = drive.resolve("other.txt");
        Files.writeString(bad, "2026-05-04T17:00:00Z " + recording.getFileName() + " " + "0".repeat(64) + "\n");

        Desk held = Desk.run("incident", recording, "--at", AT, "--against", good);
        Desk contradicted = Desk.run("incident", recording, "--at", AT, "--against", bad);

        assertEquals(0, held.code(), held.err());
        assertTrue(words(held).contains("Kept in last-links.txt: link of 2026-05-04T17:00:00Z"), held.out());
        assertEquals(3, contradicted.code());
        assertTrue(words(contradicted).contains("CONTRADICTED: Kept in other.txt"), contradicted.out());
    }

    @Test
    void tellsLastInspectionsOfTheLedgerUpToThatMoment(@TempDir Path desk) throws IOException {
        Path ledger = desk.resolve("ledger.jsonl");
        Files.writeString(
                ledger,
                entry("a", "inspected", "2026-03-01T12:00:00Z", "\"piece\":\"red\",\"result\":\"back-in-service\"")
                        + entry(
                                "b",
                                "inspected",
                                "2026-04-01T12:00:00Z",
                                "\"piece\":\"red\",\"result\":\"back-in-service\"")
                        + entry("c", "out-of-service", "2026-04-02T12:00:00Z", "\"piece\":\"blue\"")
                        + entry("d", "inspected", "2026-05-10T12:00:00Z", "\"result\":\"scrap\"")
                        + "torn\n");

        Desk run = Desk.run("incident", recording, "--at", AT, "--zone", "UTC", "--ledger", ledger);

        assertEquals(3, run.code(), "a line of the ledger was left out");
        assertTrue(run.err().contains("ledger.jsonl:5: this is no entry: torn."), run.err());
        String words = words(run);
        assertTrue(words.contains("1 THING UNREAD OR IN DOUBT"), words);
        assertTrue(words.contains("line 5: this is no entry: torn."), words);
        assertTrue(
                words.contains("2026-04-01 inspected: back in service, piece red, by owner;"
                        + " 2026-04-02 out of service, piece blue, by owner"),
                words);
        assertFalse(words.contains("2026-03-01"), words);
        assertFalse(words.contains("2026-05-10"), words);
        assertTrue(words.contains("1 line of the ledger could not be used."), words);
        assertEquals(
                2,
                Desk.run("incident", recording, "--at", AT, "--ledger", desk.resolve("none"))
                        .code());
    }

    @Test
    void ledgerDoubtsStandInTheDocument(@TempDir Path desk) throws IOException {
        Path ledger = desk.resolve("ledger.jsonl");
        Files.writeString(
                ledger,
                entry("a", "inspected", "2026-03-01T12:00:00Z", "\"winch\":\"uper-landing\",\"result\":\"scrap\""));
        Path html = desk.resolve("incident.html");

        Desk run = Desk.run("incident", recording, "--at", AT, "--json", "--ledger", ledger, "--html", html);

        assertEquals(0, run.code(), run.err());
        String doubt = "Entries of the ledger are of a winch \"uper-landing\"";
        assertTrue(
                Cases.json(recording, AT, "--ledger", ledger)
                        .getAsJsonArray("ledger_doubts")
                        .get(0)
                        .getAsString()
                        .startsWith(doubt),
                run.out());
        assertTrue(Files.readString(html).contains("of which no recording is here"), "on the page, too");
        assertEquals(
                0, Cases.json(recording, AT).getAsJsonArray("ledger_doubts").size());
    }

    @Test
    void anotherCalibrationIsAWhatIf(@TempDir Path desk) throws Exception {
        Path twice = Files.writeString(
                desk.resolve("calibration.toml"),
                Cases.known().toml().replace("b1_counts_per_newton = 1.0", "b1_counts_per_newton = 0.5"));

        Desk run = Desk.run("incident", recording, "--at", AT, "--calibration", twice);
        JsonObject outing = Cases.json(recording, AT, "--calibration", twice).getAsJsonObject("outing");
        JsonObject recorded = Cases.json(recording, AT).getAsJsonObject("outing");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("*** WHAT IF"), run.out());
        assertTrue(words(run).contains("another calibration is used than the one kept in the recording"), run.out());
        assertEquals(
                2 * recorded.getAsJsonObject("greatest").get("peak_n").getAsDouble(),
                outing.getAsJsonObject("greatest").get("peak_n").getAsDouble(),
                1e-6);
        assertTrue(outing.getAsJsonObject("calibration").get("other").getAsBoolean());
        assertFalse(recorded.getAsJsonObject("calibration").get("other").getAsBoolean());
        assertFalse(recorded.getAsJsonObject("calibration")
                .get("sha256")
                .equals(outing.getAsJsonObject("calibration").get("sha256")));
        assertEquals(
                2,
                Desk.run("incident", recording, "--at", AT, "--calibration", recording)
                        .code());
    }

    private static String entry(String id, String kind, String at, String more) {
        return "{\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"at\":\"" + at
                + "\",\"gear\":\"choker\",\"by\":\"owner\"," + more + "}\n";
    }

    @Test
    void carriesWhatIfUnderAnotherHookup() {
        Desk run = Desk.run("incident", recording, "--at", AT, "--hookup", "round-the-corner");

        assertTrue(run.out().contains("*** WHAT IF"), run.out());
        assertTrue(words(run).contains("This is a WHAT IF, not what was in force on the day."), run.out());
    }

    @Test
    void refusesWrongUsage() {
        assertEquals(2, Desk.run("incident", recording).code());
        assertEquals(2, Desk.run("incident", recording, "--at", "noon").code());
        assertEquals(
                2, Desk.run("incident", recording, "--at", AT, "--around", "0s").code());
        assertEquals(
                2,
                Desk.run("incident", recording, "--at", AT, "--around", "long").code());
        assertEquals(
                2, Desk.run("incident", recording, "--at", AT, "--pdf", "-").code());
        assertEquals(
                2,
                Desk.run("incident", recording, "--at", AT, "--pdf", recording).code());
        assertEquals(
                2,
                Desk.run("incident", recording, "--at", AT, "--json", "--html", "-")
                        .code());
        assertEquals(3, Desk.run("incident", folder.resolve("none"), "--at", AT).code());
    }
}
