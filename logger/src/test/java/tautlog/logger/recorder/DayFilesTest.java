package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.logger.LoggerFolder;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingException.Scope;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Where the day's outings go when a recording of the day cannot be gone on with. */
class DayFilesTest {
    private static final OutingStart START = new OutingStart(
            new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6),
            LoggerFolder.RIG,
            CellCalibration.written(Calibration.of("0", "0.01")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);
    /** 2026-05-04, 07:00 UTC. */
    private static final long MORNING_MICROS = 1_777_878_000_000_000L;

    private static final int PAGE = 1_024;

    @TempDir
    Path folder;

    private Path first;

    @BeforeEach
    void aRecordingOfTheDay() throws IOException {
        first = named("upper-landing_2026-05-04.tautlog");
        assertEquals(first, outing());
    }

    private Path named(String name) {
        return folder.resolve(name);
    }

    private RecordingFiles files() {
        return new RecordingFiles(folder, "upper-landing");
    }

    /** Starts, records an outing, stops; the file that it went to. */
    private Path outing() throws IOException {
        new InterruptedOutings(files()).finishAll(files().dated(MORNING_MICROS));
        try (DayFiles store = new DayFiles(files())) {
            OutingWriter outing = store.begin(START, Optional.of(MORNING_MICROS));
            outing.tension(0, 0, 0, new int[50], 0, 50);
            outing.end();
            outing.commit();
            return Path.of(store.file().orElseThrow());
        }
    }

    private static int outings(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            return recording.outings().size();
        }
    }

    private void assertGoesOnBesideIt() throws IOException {
        byte[] before = Files.readAllBytes(first);
        Path second = named("upper-landing_2026-05-04_2.tautlog");

        assertEquals(second, outing());
        assertEquals(second, outing());

        assertEquals(2, outings(second));
        assertArrayEquals(before, Files.readAllBytes(first));
    }

    @Test
    void goesOnInTheDaysFileWhenThatIsWell() throws IOException {
        assertEquals(first, outing());
        assertEquals(2, outings(first));
    }

    @Test
    void goesOnBesideAFileWhoseFirstPageIsDestroyed() throws IOException {
        byte[] bytes = Files.readAllBytes(first);
        Arrays.fill(bytes, 0, PAGE, (byte) 0xff);
        Files.write(first, bytes);

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideAFileThatIsTorn() throws IOException {
        byte[] bytes = Files.readAllBytes(first);
        Files.write(first, Arrays.copyOf(bytes, bytes.length / 2));

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideAFileWhoseTablesAreDestroyed() throws IOException {
        // given: the root of the table of tables, behind the file's header of 100 bytes
        byte[] bytes = Files.readAllBytes(first);
        Arrays.fill(bytes, 100, PAGE, (byte) 0);
        Files.write(first, bytes);

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideAFileOfAnotherProgram() throws IOException {
        Files.writeString(first, "shopping list ".repeat(500));

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideARecordingOfANewerFormat() throws IOException {
        // given: user_version, bytes 60 to 63 of an SQLite file (sqlite.org/fileformat2.html, 1.3)
        byte[] newer = Files.readAllBytes(first);
        newer[63] = 99;
        Files.write(first, newer);

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideARecordingOfAnotherWinch() throws IOException {
        Files.delete(first);
        RecordingWriter.open(first, "Upper Landing").close();

        assertGoesOnBesideIt();
    }

    @Test
    void goesOnBesideARecordingThatSomebodyElseWrites() throws IOException {
        try (RecordingWriter other = RecordingWriter.open(first, "upper-landing")) {
            assertEquals(List.of(), other.interrupted());
            assertGoesOnBesideIt();
        }
    }

    @Test
    void takesTheNextNameThatWillDo() throws IOException {
        Files.writeString(first, "shopping list ".repeat(500));
        Files.writeString(named("upper-landing_2026-05-04_2.tautlog"), "another list ".repeat(500));
        Path third = named("upper-landing_2026-05-04_3.tautlog");

        assertEquals(third, outing());
        assertEquals(third, outing());
    }

    @Test
    void staysInOneFileWhileItIsOpen() throws IOException {
        Files.writeString(first, "shopping list ".repeat(500));

        try (DayFiles store = new DayFiles(files())) {
            for (int k = 0; k < 2; k++) {
                OutingWriter outing = store.begin(START, Optional.of(MORNING_MICROS));
                outing.end();
                outing.commit();
            }
        }

        assertEquals(2, outings(named("upper-landing_2026-05-04_2.tautlog")));
    }

    @Test
    void triesNoOtherNameWhereTheFolderIsTheTrouble() {
        RecordingFiles gone = new RecordingFiles(folder.resolve("gone"), "upper-landing");

        RecordingException refused = assertThrows(
                RecordingException.class, () -> new DayFiles(gone).begin(START, Optional.of(MORNING_MICROS)));

        assertEquals(Scope.BEYOND, refused.scope());
        assertFalse(Files.exists(folder.resolve("gone")));
    }
}
