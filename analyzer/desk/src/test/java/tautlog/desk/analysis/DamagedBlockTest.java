package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;

/** Damage to evidence stands where the owner looks, and no sample counts that was not read. */
class DamagedBlockTest {
    private static final int SAMPLES = 61 * 500;
    /** RECORDING.md: a span ends before the frame that would make it hold more than 16,384; frames of 50. */
    private static final int FIRST_SPAN = 16_384 / 50 * 50;

    @TempDir
    Path folder;

    private Path recording;

    @BeforeEach
    void damageTheFirstBlockOfSamples() throws Exception {
        recording = ShortDay.write(folder, "damaged.tautlog", day -> day.hold(60, 3_000));
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + recording)) {
            assertEquals(
                    1,
                    connection
                            .createStatement()
                            .executeUpdate(
                                    "UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 2 AND span ="
                                            + " (SELECT min(span) FROM evidence WHERE kind = 2)"));
        }
    }

    @Test
    void reportNamesItUnderWhatNeedsActionAndCountsOnlyWhatWasRead() {
        Desk run = Desk.run("report", recording);
        String page = run.out().replaceAll("\\s+", " ");
        String action = page.substring(page.indexOf("WHAT NEEDS ACTION"), page.indexOf("WHAT HAPPENED"));

        assertEquals(3, run.code());
        assertTrue(page.contains("*** NOT EVERYTHING IS HERE: 1 damaged block could not be read."), page);
        assertTrue(action.contains("! Damaged: damaged.tautlog, outing 1, samples block"), action);
        assertTrue(page.contains((SAMPLES - FIRST_SPAN) + " readings of the line"), page);
        assertTrue(run.err().contains("damaged: damaged.tautlog, outing 1, samples block"), run.err());
    }

    @Test
    void jsonCountsOnlyWhatWasRead() {
        JsonObject report = JsonParser.parseString(
                        Desk.run("report", recording, "--json").out())
                .getAsJsonObject();

        assertEquals(
                SAMPLES - FIRST_SPAN,
                report.getAsJsonArray("recordings")
                        .get(0)
                        .getAsJsonObject()
                        .get("samples")
                        .getAsLong());
        assertEquals(1, report.getAsJsonArray("damaged_blocks").size());
    }

    @Test
    void hoursAndExportSaySoAndEndWithThree() {
        Desk hours = Desk.run("hours", recording);
        Desk export = Desk.run("export", recording, "--csv", "-");
        Desk seconds = Desk.run("export", recording, "--csv", "-", "--seconds");

        for (Desk run : new Desk[] {hours, export, seconds}) {
            assertEquals(3, run.code());
            assertTrue(run.err().contains("damaged: damaged.tautlog, outing 1, samples block"), run.err());
        }
        assertEquals(SAMPLES - FIRST_SPAN, export.out().lines().count() - 1);
    }

    @Test
    void aHookupThatIsLostWithEventsIsAssumedAndNoWhatIf() throws Exception {
        Path events = ShortDay.write(folder, "events.tautlog", day -> day.hold(60, 3_000));
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + events)) {
            int changed = connection
                    .createStatement()
                    .executeUpdate("UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 4");
            assertTrue(changed > 0, "no block of events");
        }

        Desk run = Desk.run("report", events);
        JsonObject json = JsonParser.parseString(
                        Desk.run("report", events, "--json").out())
                .getAsJsonObject();

        String page = run.out().replaceAll("\\s+", " ");
        assertEquals(3, run.code());
        assertTrue(page.contains("events block"), page);
        assertTrue(page.contains("assumed"), page);
        assertFalse(page.contains("WHAT IF"), page);
        assertEquals(0, json.getAsJsonArray("what_if").size());
    }
}
