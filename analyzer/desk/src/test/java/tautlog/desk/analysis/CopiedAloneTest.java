package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;

/** A recording that the power ended, copied with and without the log that holds its newest rows. */
class CopiedAloneTest {
    @TempDir
    Path folder;

    private Path alone;
    private Path together;

    @BeforeEach
    void copyWhileItIsBeingWritten() throws IOException {
        alone = Files.createDirectory(folder.resolve("alone")).resolve("day.tautlog");
        together = Files.createDirectory(folder.resolve("together")).resolve("day.tautlog");
    }

    private void record(int closedBefore) throws IOException {
        Path file = folder.resolve("day.tautlog");
        for (int boot = 1; boot <= closedBefore; boot++) {
            try (RecordingWriter recording = RecordingWriter.open(file, "day")) {
                ShortDay.append(recording, boot, 0, SampleDay.rigToml(), day -> day.hold(3, 3_000));
            }
        }
        try (RecordingWriter recording = RecordingWriter.open(file, "day")) {
            ShortDay.append(recording, 9, 3_600, SampleDay.rigToml(), day -> day.hold(3, 20_000));
            Files.copy(file, alone);
            Files.copy(file, together);
            Files.copy(Path.of(file + "-wal"), Path.of(together + "-wal"));
        }
    }

    private static String flowing(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void reportOfTheMainFileAloneSaysAtTheTopThatAnOutingIsMissing() throws IOException {
        record(1);

        Desk run = Desk.run("report", alone);

        assertEquals(3, run.code());
        assertTrue(flowing(run).contains("*** NOT EVERYTHING IS HERE: 1 outing could not be read."), run.out());
        assertTrue(
                flowing(run)
                        .contains(
                                "! Left out: outing 2 of day.tautlog (nobody knows how many samples), because it was begun here and its newest rows"
                                        + " stand in day.tautlog-wal, which is not beside the file (copy both files together)"),
                run.out());
        assertTrue(run.err().contains("left out: outing 2 of day.tautlog"), run.err());
    }

    @Test
    void reportOfTheOnlyOutingDoesNotSayThatNothingWasRecorded() throws IOException {
        record(0);

        Desk run = Desk.run("report", alone);

        assertEquals(3, run.code());
        assertTrue(flowing(run).contains("Left out: outing 1 of day.tautlog"), run.out() + run.err());
        assertFalse(run.out().contains("othing was recorded"), run.out());
    }

    @Test
    void hoursExportAndVerifySaySoToo() throws IOException {
        record(1);

        Desk verify = Desk.run("verify", alone);

        assertEquals(3, Desk.run("hours", alone).code());
        assertEquals(3, Desk.run("export", alone, "--csv", "-").code());
        assertEquals(3, verify.code());
        assertTrue(verify.out().contains("day.tautlog: INCOMPLETE"), verify.out());
        assertTrue(verify.out().contains("LOST outing 2, nobody knows how many samples"), verify.out());
    }

    @Test
    void bothFilesTogetherHoldEveryOuting() throws IOException {
        record(1);

        Desk run = Desk.run("report", together, "--json");

        assertEquals(0, run.code());
        assertEquals(
                2,
                JsonParser.parseString(run.out())
                        .getAsJsonObject()
                        .getAsJsonArray("pulls")
                        .size());
        assertEquals(0, Desk.run("verify", together).code());
    }
}
