package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class ReportPageTest {
    @TempDir
    static Path folder;

    private static Path recording;
    private static String text;

    @BeforeAll
    static void reportsTheSampleDay() throws IOException {
        recording = SampleDay.write(folder);
        text = Desk.run("report", recording, "--zone", "UTC").out();
    }

    /** Lines joined, so that a golden sentence does not hang on where it was broken. */
    private static String flowing(String page) {
        return page.replaceAll("\\s+", " ");
    }

    @Test
    void tellsWhatNeedsActionBeforeAnythingElse() {
        int action = text.indexOf("WHAT NEEDS ACTION");

        assertTrue(action > 0);
        for (String later : List.of("WHAT HAPPENED", "PULLS", "HOURS", "HOW FAR TO TRUST THIS")) {
            assertTrue(text.indexOf(later) > action, later);
        }
    }

    @Test
    void asksForOneInspectionOfAPieceHoweverOftenItWasOverloaded() {
        String page = flowing(text);

        assertEquals(2, page.split("choker \\(past-", -1).length);
        assertTrue(
                page.contains(
                        "choker (past-proof, how sure is not known): Take it out of service: it is measured and inspected by a competent"
                                + " person, or scrapped. Inspect its neighbours in the line too. It is one of 6 alike, and which of them was on is not"
                                + " known: all 6 are meant until it is. Overloaded twice; the greatest"
                                + " load was 33.0 kN, 211 % of the 15.7 kN allowed"),
                page);
    }

    @Test
    void tellsWhatHappenedInSentencesWithLocalTimeAndShareOfTheLimit() {
        String page = flowing(text);

        assertTrue(
                page.contains(
                        "07:00:15.0 Shock: a line that had been slack for 4.6 s snapped tight to 17.0 kN within 0.03"
                                + " s, 109 % of limit, 2.8 times the 6.00 kN it settled at."),
                page);
        assertTrue(page.contains("07:00:32.9 Drop: tension fell from 6.01 kN to 0.04 kN within 0.052 s; the line stayed"
                + " slack. The shaft ran up."));
        assertTrue(page.contains("pulled down from 536 rpm to 294 rpm at 9.00 kN; it recovered after 1.6 s."));
    }

    @Test
    void tellsWhatEachLimitRestsOnOnceAndForWhichHookups() {
        String page = flowing(text);

        assertTrue(page.contains("What these limits rest on - rope: "), page);
        assertEquals(2, page.split("- cell: Rating: the load cell's own capacity.", -1).length, page);
        assertTrue(page.contains("(round-the-corner)"), page);
        assertTrue(page.contains("No reading was at the converter's end stop."), page);
    }

    @Test
    void usesTheZoneAndTheUnitThatWereAskedFor() {
        String page = Desk.run("report", recording, "--zone", "America/New_York", "--units", "lbf")
                .out();

        assertTrue(page.contains("03:00:15.0 Shock"), page);
        assertTrue(flowing(page).contains("limit 3525 lbf"), page);
    }

    @Test
    void staysWithinEightyColumns() {
        List<String> wide = text.lines().filter(line -> line.length() > 80).toList();

        assertEquals(List.of(), wide);
    }

    @Test
    void neverSaysThatAnythingIsSafeOrOk() {
        Pattern never = Pattern.compile("\\b(safe|safely|OK|okay|no danger)\\b", Pattern.CASE_INSENSITIVE);

        assertFalse(never.matcher(text).find());
    }

    @Test
    void saysWhatStandsWithEveryForce() {
        String page = flowing(text);

        for (String sentence : StandingText.sentences()) {
            assertTrue(page.contains(sentence), sentence);
        }
        assertTrue(page.contains("A static calibration does not prove dynamic accuracy."));
        assertTrue(page.contains("Loads of logs hung on the winch's frame while driving are not seen."));
    }

    @Test
    void keepsATerminalsControlCharactersOutOfNotes() {
        assertFalse(text.chars().anyMatch(c -> c < 0x20 && c != '\n'));
        assertTrue(text.contains("stump <beside> the trail & ?[31mred"));
    }

    @Test
    void carriesWhatIfWhenAnotherHookupIsTakenToBeOn() {
        String page = flowing(
                Desk.run("report", recording, "--hookup", "round-the-corner").out());

        assertTrue(
                page.contains("*** WHAT IF: not what was in force on the day. Hookup round-the-corner is taken"), page);
    }

    @Test
    void carriesWhatIfWhenTheRigIsAnother() throws IOException {
        Path thinner = folder.resolve("thinner.toml");
        Files.writeString(thinner, SampleDay.rigToml().replace("5/16 in", "1/4 in"));
        Path same = folder.resolve("same.toml");
        Files.writeString(same, SampleDay.rigToml());

        assertTrue(Desk.run("report", recording, "--rig", thinner).out().contains("WHAT IF"));
        assertFalse(Desk.run("report", recording, "--rig", same).out().contains("WHAT IF"));
    }

    @Test
    void listsOnlyWhatLiesInTheTimeAskedFor() {
        String page = Desk.run(
                        "report",
                        recording,
                        "--from",
                        "2026-05-04T07:00:18Z",
                        "--to",
                        "2026-05-04T07:00:24Z",
                        "--zone",
                        "UTC")
                .out();

        assertTrue(flowing(page).contains("Found: 1 pull, 0 overloads, 0 shocks, 1 jolt, 0 drops and 1 stall."), page);
        assertTrue(flowing(page).contains("in the time from 2026-05-04T07:00:18Z to 2026-05-04T07:00:24Z"), page);
    }

    @Test
    void saysOfWhichPieceProofAndBreakingLoadAre() {
        assertTrue(
                flowing(text).matches(".* Its proof load is [0-9.]+ kN and its breaking load is [0-9.]+ kN\\..*"),
                text);
    }

    @Test
    void pullThatTheOutingsEndCutsMissesNoReadings() throws IOException {
        Path cut = tautlog.desk.fixtures.ShortDay.write(folder, "cut.tautlog", day -> day.hold(3, 20_000));

        String page = flowing(Desk.run("report", cut).out());

        assertTrue(page.contains("; cut off by the outing's end"), page);
        assertFalse(page.contains("; readings are missing"), page);
    }
}
