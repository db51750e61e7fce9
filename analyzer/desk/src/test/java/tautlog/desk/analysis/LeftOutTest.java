package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;

/** What cannot be read is named on top of the report, counted in no figure, and the report of the rest is given. */
class LeftOutTest {
    @TempDir
    Path folder;

    private Path two;

    @BeforeEach
    void recordTwoOutings() throws IOException {
        two = folder.resolve("two.tautlog");
        try (RecordingWriter recording = RecordingWriter.open(two, "two")) {
            ShortDay.append(recording, 1, 0, SampleDay.rigToml(), day -> day.hold(3, 3_000));
            ShortDay.append(recording, 2, 3_600, SampleDay.rigToml(), day -> day.hold(3, 4_000));
        }
    }

    private static void change(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.createStatement().executeUpdate(sql);
        }
    }

    private void damageSecondStart() throws SQLException {
        change(two, "UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 1 AND outing = 1");
    }

    private Path torn() throws IOException {
        Path torn = folder.resolve("torn.tautlog");
        byte[] whole = Files.readAllBytes(SampleDay.write(folder, "whole.tautlog", 9, 7_200));
        Files.write(torn, Arrays.copyOf(whole, whole.length / 2));
        Files.delete(folder.resolve("whole.tautlog"));
        return torn;
    }

    private static String flowing(String page) {
        return page.replaceAll("\\s+", " ");
    }

    private static JsonObject json(Desk run) {
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    @Test
    void namesAnOutingWhoseStartIsDamagedOnTopAndEndsWithThree() throws Exception {
        damageSecondStart();

        Desk run = Desk.run("report", two);

        String page = flowing(run.out());
        assertEquals(3, run.code());
        assertTrue(page.contains("*** NOT EVERYTHING IS HERE: 1 outing could not be read."), page);
        assertTrue(
                page.contains(
                        "! Left out: outing 2 of two.tautlog (about 2000 samples), because its start block is damaged: it"
                                + " does not begin with the mark of a block. Copy the recording again from the board if it is"
                                + " still there. "),
                page);
        assertTrue(page.contains("Found: 1 pull,"), page);
        assertTrue(page.contains("nor of pulls that were not recorded or could not be read."), page);
        assertTrue(run.err().contains("outing 2 of two.tautlog"), run.err());
    }

    @Test
    void saysNothingGoodOfARecordingOfWhichNothingCouldBeRead() throws Exception {
        change(two, "UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 1");

        String page = flowing(Desk.run("report", two).out());
        JsonObject trust = json(Desk.run("report", two, "--json")).getAsJsonObject("trust");

        assertTrue(page.contains("No outing was read: nothing here says that anything was in order."), page);
        assertFalse(page.contains("No reading number is missing"), page);
        assertFalse(trust.getAsJsonObject("zero").get("proven").getAsBoolean());
    }

    @Test
    void jsonHasOutingAndRecordingLeftOutAndThePageNamesBoth() throws Exception {
        damageSecondStart();
        Path torn = torn();
        Path page = folder.resolve("page.html");

        Desk run = Desk.run("report", folder, "--json", "--html", page);

        JsonObject report = json(run);
        JsonObject outing = report.getAsJsonArray("outings_left_out").get(0).getAsJsonObject();
        JsonArray recordings = report.getAsJsonArray("recordings_left_out");
        assertEquals(3, run.code());
        assertEquals(1, report.getAsJsonArray("pulls").size());
        assertEquals(two.toString(), outing.get("file").getAsString());
        assertEquals(2, outing.get("outing").getAsInt());
        assertEquals(2_000, outing.get("samples").getAsLong());
        assertEquals(1, recordings.size());
        assertEquals(
                torn.toString(), recordings.get(0).getAsJsonObject().get("file").getAsString());
        assertTrue(
                recordings.get(0).getAsJsonObject().get("reason").getAsString().startsWith("is torn"), run.out());
        String html = Files.readString(page);
        assertTrue(html.contains("NOT EVERYTHING IS HERE: 1 recording and 1 outing could not be read."), html);
        assertTrue(html.contains("torn.tautlog, because it cannot be read: is torn"), html);
    }

    @Test
    void refusesWithThreeWhenNoneCanBeReadAndNamesEach() throws IOException {
        Path empty = folder.resolve("empty.tautlog");
        Files.createFile(empty);

        Desk run = Desk.run("report", torn(), empty);

        assertEquals(3, run.code());
        assertTrue(run.out().isEmpty(), run.out());
        assertTrue(run.err().contains("torn.tautlog: is torn"), run.err());
        assertTrue(run.err().contains("empty.tautlog: is empty"), run.err());
    }

    @Test
    void hoursAndExportTellTheRestAndEndWithThree() throws Exception {
        damageSecondStart();
        torn();

        Desk hours = Desk.run("hours", folder);
        Desk json = Desk.run("hours", folder, "--json");
        Desk export = Desk.run("export", folder, "--csv", "-");

        assertEquals(3, hours.code());
        assertTrue(flowing(hours.out()).contains("Left out: torn.tautlog"), hours.out());
        assertEquals(1, json(json).getAsJsonArray("outings_left_out").size());
        assertEquals(3, export.code());
        assertEquals(2_000, export.out().lines().count() - 1);
        assertTrue(export.err().contains("left out: outing 2 of two.tautlog"), export.err());
    }

    @Test
    void leavesNothingOutOfWhatIsWhole() {
        Desk run = Desk.run("report", two);

        assertEquals(0, run.code());
        assertFalse(run.out().contains("NOT EVERYTHING"), run.out());
        assertTrue(json(Desk.run("report", two, "--json"))
                .getAsJsonArray("outings_left_out")
                .isEmpty());
    }

    @Test
    void endsWithOneWhenABandIsReachedThoughSomethingIsMissing() throws Exception {
        SampleDay.write(folder);
        torn();

        assertEquals(1, Desk.run("report", folder, "--fail-on", "past-wll").code());
        assertEquals(3, Desk.run("report", folder, "--fail-on", "past-breaking").code());
    }

    @Test
    void leavesAnOutingOutWhoseRigThisProgramCannotReadAndRefusesWhenItIsTheOnlyOne() throws IOException {
        Path other = folder.resolve("other.tautlog");
        ShortDay.write(folder, "other.tautlog", "schema = 99\n", day -> day.hold(3, 3_000));

        Desk both = Desk.run("report", folder, "--json");
        Desk only = Desk.run("report", other);

        assertEquals(3, both.code());
        assertEquals(2, json(both).getAsJsonArray("pulls").size());
        assertTrue(both.out().contains("the rig stored in it cannot be read"), both.out());
        assertEquals(3, only.code());
        assertTrue(only.err().contains("`tautlog report --rig rig.toml` reads it with another one."), only.err());
    }

    /** The rig of a newer program: the file is whole, copying it again is of no use, and `hours` knows no other rig. */
    @Test
    void allCommandsTellTheSameOfAnOutingWhoseRigCannotBeRead() throws IOException {
        Path strange = folder.resolve("strange.tautlog");
        try (RecordingWriter recording = RecordingWriter.open(strange, "strange")) {
            ShortDay.append(recording, 3, 0, SampleDay.rigToml(), day -> day.hold(3, 3_000));
            String rig = SampleDay.rigToml().replaceFirst("\"20 kN\"", "\"20 bananas\"") + "[news]\n";
            ShortDay.append(recording, 4, 3_600, rig, day -> day.hold(3, 3_000));
            ShortDay.append(recording, 5, 7_200, SampleDay.rigToml(), day -> day.hold(2, 3_000));
        }
        String sentence =
                "outing 2 of strange.tautlog (about 2000 samples), because the rig stored in it cannot be read"
                        + " (line 28: gear.strap-1.wll: \"20 bananas\" is not a force; line 54: news: is not a known"
                        + " key). `tautlog report --rig rig.toml` reads it with another one.";

        Desk report = Desk.run("report", strange);
        Desk hours = Desk.run("hours", strange);
        Desk samples = Desk.run("export", strange, "--csv", "-");
        Desk seconds = Desk.run("export", strange, "--csv", "-", "--seconds");

        for (Desk run : List.of(report, hours, samples, seconds)) {
            assertEquals(3, run.code(), run.err());
            assertEquals("left out: " + sentence + "\n", run.err());
        }
        for (Desk run : List.of(report, hours)) {
            assertTrue(flowing(run.out()).contains("Left out: " + sentence), run.out());
        }
        assertEquals(List.of("1", "2"), outings(samples));
        assertEquals(2_000 + 1_500, samples.out().lines().count() - 1);
        assertEquals(List.of("1", "2"), outings(seconds));
    }

    private static List<String> outings(Desk table) {
        return table.out()
                .lines()
                .skip(1)
                .map(row -> row.substring(0, row.indexOf(',')))
                .distinct()
                .toList();
    }

    @Test
    void verifyNamesTheLostOutingWithItsSamples() throws Exception {
        damageSecondStart();

        Desk text = Desk.run("verify", two);
        Desk json = Desk.run("verify", two, "--json");

        assertEquals(3, text.code());
        assertTrue(text.out().contains("LOST outing 2, about 2000 samples: its start block is damaged"), text.out());
        JsonObject lost = json(json)
                .getAsJsonArray("recordings")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("outings_lost")
                .get(0)
                .getAsJsonObject();
        assertEquals(2, lost.get("outing").getAsInt());
        assertEquals(2_000, lost.get("samples").getAsLong());
    }

    /** Lost events may hold a change of hookup: from there the lowest limit counts, assumed, and the report says why. */
    @Test
    void saysThatEventsWereDamagedAndTakesTheHookupAsAssumedFromThere() throws Exception {
        Path named = ShortDay.write(folder, "named.tautlog", day -> {
            day.hookup("straight", tautlog.sample.HookupSource.MARK);
            day.hold(3, 3_000);
        });
        assertFalse(assumed(Desk.run("report", named, "--json")));

        change(named, "UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 4");

        Desk run = Desk.run("report", named, "--json");
        assertTrue(assumed(run), run.out());
        assertTrue(json(run).getAsJsonArray("notes").toString().contains("DAMAGED: named.tautlog, outing 1, events"));
    }

    /** From the damaged or missing events to the next naming; then what was said counts again. */
    @ParameterizedTest
    @ValueSource(strings = {"UPDATE evidence SET block = zeroblob(length(block))", "DELETE FROM evidence"})
    void saysFromWhenToWhenNobodyKnowsWhichHookupWasOn(String loss) throws Exception {
        Path named = ShortDay.write(folder, "named.tautlog", day -> {
            day.hookup("straight", tautlog.sample.HookupSource.SELECTOR);
            day.hold(3, 3_000);
            day.hold(33, 0); // the next block of readings begins
            day.hookup("straight", tautlog.sample.HookupSource.MARK);
            day.hold(3, 3_000);
        });
        assertFalse(Desk.run("report", named).out().contains("is not known: what may have named it"));
        assertTrue(json(Desk.run("report", named, "--json"))
                .getAsJsonArray("hookups_not_known")
                .isEmpty());
        change(named, loss + " WHERE seq = (SELECT min(seq) FROM evidence WHERE kind = 4)");

        Desk text = Desk.run("report", named);
        Desk asked = Desk.run("report", named, "--hookup", "straight");
        JsonArray unknown = json(Desk.run("report", named, "--json")).getAsJsonArray("hookups_not_known");

        assertTrue(
                flowing(text.out())
                        .contains(
                                "Hookup not known: which hookup was on from 0.0 s after start to 35.9 s after start is"
                                        + " not known: what may have named it is damaged or missing. Hookup round-the-corner, which has the"
                                        + " lowest limit, is assumed."),
                text.out());
        assertTrue(flowing(text.out()).contains("nobody is known to have said that hookup"), text.out());
        assertFalse(text.out().contains("nobody said"), text.out());
        assertFalse(text.out().contains("nobody had said"), text.out());
        assertFalse(asked.out().contains("Hookup not known"), asked.out());
        assertEquals(3, text.code());
        assertTrue(text.err().startsWith("damaged: "), text.err());
        assertTrue(text.out().contains("DAMAGED: named.tautlog, outing 1, "), text.out());
        assertEquals(1, unknown.size());
        JsonObject stretch = unknown.get(0).getAsJsonObject();
        assertEquals(0, stretch.get("outing_s").getAsDouble());
        assertEquals(35.9, stretch.get("outing_end_s").getAsDouble(), 1e-9, "its last frame");
        assertEquals("round-the-corner", stretch.get("taken").getAsString());
    }

    private static boolean assumed(Desk run) {
        return json(run)
                .getAsJsonArray("pulls")
                .get(0)
                .getAsJsonObject()
                .get("hookup_assumed")
                .getAsBoolean();
    }
}
