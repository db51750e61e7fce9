package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** RECORDING.md, "Copied alone": a main file whose newest rows stand in a log that is not beside it says so itself. */
class CopiedAloneTest {
    private static final int SAMPLES_A_SECOND = 25;

    @TempDir
    Path folder;

    private static void outing(RecordingWriter writer, int seed) throws RecordingException {
        OutingWriter outing = writer.begin(Story.START);
        Story.plain(seed, 20).tell(outing);
        outing.commit();
    }

    /** As a power cut leaves it: one outing closed in order on an earlier run, one that the power ended. */
    private Path cutOff(int closedBefore) throws IOException {
        Path file = folder.resolve("day.tautlog");
        for (int seed = 0; seed < closedBefore; seed++) {
            try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
                outing(writer, seed);
            }
        }
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        outing(writer, 7);
        writer.abandon();
        return file;
    }

    private Path copy(Path file, String... endings) throws IOException {
        Path copy = Files.createDirectory(folder.resolve("copy")).resolve("day.tautlog");
        for (String ending : endings) {
            Files.copy(Path.of(file + ending), Path.of(copy + ending));
        }
        return copy;
    }

    private static Verification verify(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            Verification found = recording.verify();
            assertEquals(found.lost(), recording.lostOutings());
            return found;
        }
    }

    private static void assertMissingFrom(int outing, Path file, String words) throws RecordingException {
        Verification found = verify(file);
        assertFalse(found.isIntact());
        assertEquals(
                List.of(outing), found.lost().stream().map(LostOuting::index).toList());
        assertTrue(found.lost().get(0).reason().contains(words), found.lost().toString());
    }

    @Test
    void mainFileAloneSaysFromWhichOutingOnRowsAreMissing() throws IOException {
        assertMissingFrom(1, copy(cutOff(1), ""), "newest rows stand in day.tautlog-wal");
    }

    @Test
    void mainFileAloneOfTheFirstOutingSaysSoToo() throws IOException {
        assertMissingFrom(0, copy(cutOff(0), ""), "newest rows stand in day.tautlog-wal");
    }

    @Test
    void emptyLogBesideItIsAsNone() throws IOException {
        Path copy = copy(cutOff(1), "");
        Files.createFile(Path.of(copy + "-wal"));

        assertMissingFrom(1, copy, "newest rows stand in");
    }

    @Test
    void bothFilesTogetherAreComplete() throws IOException {
        Verification found = verify(copy(cutOff(1), "", "-wal"));

        assertTrue(found.isIntact(), found.toString());
        assertEquals(2, found.outings().size());
        assertEquals(2 * 20 * SAMPLES_A_SECOND, found.samples());
    }

    @Test
    void recordingThatGoesOnAfterThePowerCameBackAndIsClosedIsCompleteAlone() throws IOException {
        Path file = copy(cutOff(1), "", "-wal");
        RecordingWriter.open(file, "winch-1").close();

        Verification found = verify(file);

        assertTrue(found.isIntact(), found.toString());
        assertEquals(2 * 20 * SAMPLES_A_SECOND, found.samples());
        assertFalse(Files.exists(Path.of(file + "-wal")));
    }

    /** An instrument that starts again while the logger runs: the second outing's rows are in the log as well. */
    @Test
    void secondOutingOfOneRunIsCoveredByTheSignOfTheFirst() throws IOException {
        Path file = folder.resolve("day.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        OutingWriter first = writer.begin(Story.START);
        first.end();
        first.commit();
        outing(writer, 3);

        assertMissingFrom(0, copy(file, ""), "and outings after it");
        writer.close();
        assertTrue(verify(file).isIntact());
    }

    @Test
    void recordingThatWentOnWithoutItsLogStaysKnownToLackRows() throws IOException {
        Path alone = copy(cutOff(1), "");
        try (RecordingWriter writer = RecordingWriter.open(alone, "winch-1")) {
            outing(writer, 9);
        }

        assertMissingFrom(1, alone, "without which the recording then went on");
        RecordingWriter.open(alone, "winch-1").close();
        assertMissingFrom(1, alone, "without which the recording then went on");
    }

    /** A reader's view of the file keeps the sign from being folded; it is as soon as the view is gone. */
    @Test
    void readerAtWorkWhileAnOutingBeginsDelaysTheSignOnlyUntilItIsDone() throws Exception {
        Path file = folder.resolve("day.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        writer.close();
        writer = RecordingWriter.open(file, "winch-1");
        try (var reader = RecordingFile.openForReading(file)) {
            RecordingFile.query(reader, "SELECT count(*) FROM evidence");
            outing(writer, 4);
            reader.commit();
        }
        OutingWriter second = writer.begin(Story.START);
        second.commit();

        assertMissingFrom(0, copy(file, ""), "newest rows stand in");
        writer.close();
        assertTrue(verify(file).isIntact());
    }

    @Test
    void fileThatHoldsNothingDoesNotSayThatNothingWasRecorded() throws IOException {
        Path file = folder.resolve("day.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            Path copy = copy(file, "");
            RecordingException e = assertThrows(RecordingException.class, () -> Recording.open(copy));
            assertTrue(String.valueOf(e.getMessage()).contains("or its rows stand in day.tautlog-wal"), e.toString());
            assertEquals(List.of(), writer.interrupted());
        }
    }
}
