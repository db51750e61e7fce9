package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.analysis.LiveSpeech.Agreement;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.SampleDay.Power;
import tautlog.detect.Second;

/** What the logger said live against what its readings give now. */
class LiveSpeechTest {
    @TempDir
    Path folder;

    private static JsonElement agree(Object... arguments) {
        Desk run = Desk.run(arguments);
        assertEquals(0, run.code(), run.err());
        return JsonParser.parseString(run.out())
                .getAsJsonObject()
                .getAsJsonObject("trust")
                .get("live_findings_agree");
    }

    private static String flowing(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void agreesWhenTheOutingWasEndedInOrder() throws IOException {
        Path recording = SampleDay.writeLive(folder, Power.OFF_IN_ORDER);

        assertTrue(agree("report", recording, "--json").getAsBoolean());
        assertTrue(flowing(Desk.run("report", recording)).contains("is, field by field, what its readings give now."));
    }

    @Test
    void agreesWhenThePowerWasCutBeforeTheLastFindingsCouldBeSaid() throws IOException {
        Path recording = SampleDay.writeLive(folder, Power.CUT);

        assertTrue(agree("report", recording, "--json").getAsBoolean());
    }

    @Test
    void agreesForTheWholeOutingWhenOnlyAPartIsAskedFor() throws IOException {
        Path recording = SampleDay.writeLive(folder, Power.OFF_IN_ORDER);

        assertTrue(agree("report", recording, "--json", "--from", "2026-05-04T07:00:20Z")
                .getAsBoolean());
    }

    /** Programs before told the mean of the shaft readings, not to a tenth. */
    @Test
    void agreesWithASpeedThatWasToldWithAllItsDigits() {
        LiveSpeech old = new LiveSpeech(List.of(), List.of(turning(539.9840233581792)));
        LiveSpeech now = new LiveSpeech(List.of(), List.of(turning(540.0)));
        LiveSpeech other = new LiveSpeech(List.of(), List.of(turning(539.9)));

        assertEquals(Agreement.AGREES, old.with(now, old, true));
        assertEquals(Agreement.DIFFERS, old.with(other, old, true));
    }

    private static Second turning(double shaftRpm) {
        return new Second(0, 0, 1, 2, 3, 2, OptionalDouble.of(shaftRpm), "straight", 0.1, 0);
    }

    @Test
    void isNotKnownWhenNothingWasSaidLive() throws IOException {
        Path recording = SampleDay.write(folder);

        assertTrue(agree("report", recording, "--json").isJsonNull());
        assertTrue(
                flowing(Desk.run("report", recording)).contains("said the same on the day is not known: nothing was"));
    }

    @Test
    void isNotKnownUnderWhatIf() throws IOException {
        Path recording = SampleDay.writeLive(folder, Power.OFF_IN_ORDER);

        assertTrue(agree("report", recording, "--hookup", "round-the-corner", "--json")
                .isJsonNull());
        assertTrue(flowing(Desk.run("report", recording, "--hookup", "round-the-corner"))
                .contains("not known: another rig, calibration or hookup is used here than on the day."));
    }

    @Test
    void disagreesWhenOneFieldOfOneFindingWasAltered() throws Exception {
        Path recording = SampleDay.writeLive(folder, Power.OFF_IN_ORDER);
        alterFirstJolt(recording);

        Desk run = Desk.run("report", recording, "--zone", "UTC");

        assertFalse(agree("report", recording, "--json").getAsBoolean());
        assertTrue(
                flowing(run).contains("WHAT THE LOGGER SAID ON THE DAY IS NOT WHAT ITS READINGS GIVE NOW"), run.out());
        // the report goes on telling what the readings give: 15.0 kN, not a newton more
        assertTrue(flowing(run).contains("Found: 4 pulls, 2 overloads, 1 shock"), run.out());
    }

    /** Raises the peak by one count and mends the row's checksum, as somebody would who knows the format. */
    private static void alterFirstJolt(Path recording) throws SQLException {
        try (Connection file = DriverManager.getConnection("jdbc:sqlite:" + recording);
                PreparedStatement select =
                        file.prepareStatement("SELECT id, start, json FROM finding WHERE kind = 'jolt' ORDER BY id");
                ResultSet row = select.executeQuery();
                PreparedStatement update = file.prepareStatement("UPDATE finding SET json = ?, crc = ? WHERE id = ?")) {
            assertTrue(row.next());
            var jolt = JsonParser.parseString(row.getString(3)).getAsJsonObject();
            jolt.addProperty("peak", jolt.get("peak").getAsInt() + 1);
            CRC32C crc = new CRC32C();
            crc.update(("jolt|" + row.getLong(2) + "|" + jolt).getBytes(StandardCharsets.UTF_8));
            update.setString(1, jolt.toString());
            update.setLong(2, crc.getValue());
            update.setLong(3, row.getLong(1));
            assertEquals(1, update.executeUpdate());
        }
    }

    @Test
    void isKnownOfAllOutingsOnlyWhenItIsKnownOfEachThatSaidSomething() {
        assertEquals(Optional.empty(), LiveSpeech.ofAll(List.of()));
        assertEquals(Optional.empty(), LiveSpeech.ofAll(List.of(Agreement.SILENT)));
        assertEquals(Optional.of(true), LiveSpeech.ofAll(List.of(Agreement.SILENT, Agreement.AGREES)));
        assertEquals(Optional.empty(), LiveSpeech.ofAll(List.of(Agreement.AGREES, Agreement.NOT_COMPARED)));
        assertEquals(
                Optional.of(false),
                LiveSpeech.ofAll(List.of(Agreement.AGREES, Agreement.NOT_COMPARED, Agreement.DIFFERS)));
    }
}
