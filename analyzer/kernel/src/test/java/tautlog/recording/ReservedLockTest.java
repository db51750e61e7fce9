package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Second;

/** What another SQLite program changes is not lost when a copy takes the file's place. */
class ReservedLockTest {
    private static final String NOTE = "CREATE TABLE note AS SELECT 'a wet day' AS text";

    @TempDir
    Path folder;

    private Path file = Path.of("");

    /** May be packed and thinned. */
    @BeforeEach
    void record() throws IOException {
        file = folder.resolve("r.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 700).tell(outing);
            for (int k = 0; k < 35; k++) {
                outing.second(new Second(
                        k, 500 + 500L * k, -8, 8, 3, 500, OptionalDouble.of(540), "straight", 0.01, Second.AT_MOST));
            }
            outing.end();
            outing.commit();
        }
    }

    /** Packs or thins. */
    private interface Replacing {
        void replace() throws IOException;
    }

    private List<Replacing> waysOfReplacing() {
        return List.of(
                () -> Packer.pack(file),
                () -> Thinner.thin(file, Long.MAX_VALUE, Long.MAX_VALUE, OptionalLong.of(1_778_000_000_000_000L)));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private String note() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT text FROM note")) {
            return rows.getString(1);
        }
    }

    @Test
    void refusesAFileThatAnotherProgramIsAboutToChange() throws Exception {
        for (Replacing way : waysOfReplacing()) {
            try (OtherProgram other = new OtherProgram(file)) {
                assertEquals(OtherProgram.DONE, other.does("BEGIN IMMEDIATE"));
                assertEquals(OtherProgram.DONE, other.does(NOTE));

                RecordingException refused = assertThrows(RecordingException.class, way::replace);

                assertTrue(String.valueOf(refused.getMessage()).contains("is locked"), refused.getMessage());
                assertEquals(OtherProgram.DONE, other.does("COMMIT"));
                assertEquals("a wet day", note());
                assertEquals(OtherProgram.DONE, other.does("DROP TABLE note"));
            }
            assertEquals(List.of("r.tautlog"), names());
        }
        for (Replacing way : waysOfReplacing()) {
            Object before = Files.getAttribute(file, "unix:ino");
            way.replace();
            assertFalse(before.equals(Files.getAttribute(file, "unix:ino")), "once it may, it is replaced");
        }
    }

    @Test
    void whoHasTheFileOpenIsKeptFromChangingItWhileAndAfterItIsReplaced() throws Exception {
        try (OtherProgram other = new OtherProgram(file)) {
            assertEquals(OtherProgram.DONE, other.does("SELECT * FROM recording"));
            ReplacingCopy beside = new ReplacingCopy(file, "-pack");

            beside.locked("packed", () -> {
                assertEquals(OtherProgram.BUSY, other.does(NOTE));
                assertEquals(OtherProgram.BUSY, other.does("PRAGMA journal_mode = WAL"));
                assertEquals(OtherProgram.DONE, other.does("SELECT * FROM recording"));
                PackedCopy.write(file, beside.copy());
                beside.takePlace();
                return file;
            });

            assertEquals(OtherProgram.MAY_NOT_WRITE, other.does(NOTE), "told, not lost");
        }
        assertEquals(List.of("r.tautlog"), names());
        try (OtherProgram later = new OtherProgram(file)) {
            assertEquals(OtherProgram.DONE, later.does(NOTE));
            assertEquals("a wet day", note());
        }
    }

    @Test
    void isNotTakenInLogModeWhereWhoWaitsWouldGoOnWithTheOldFile() throws Exception {
        try (OtherProgram other = new OtherProgram(file)) {
            assertEquals(OtherProgram.DONE, other.does("PRAGMA journal_mode = WAL"));

            RecordingException refused = assertThrows(
                    RecordingException.class, () -> ReservedLock.take(file).close());

            assertTrue(String.valueOf(refused.getMessage()).contains("was opened for writing"), refused.getMessage());
            assertEquals(OtherProgram.DONE, other.does(NOTE));
        }
    }

    /** It may be gone since somebody looked. */
    @Test
    void makesNoFileWhereNoneIsAnyMore() throws IOException {
        Path gone = folder.resolve("gone.tautlog");

        assertThrows(SQLException.class, () -> ReservedLock.connect(gone).close());

        assertEquals(List.of("r.tautlog"), names());
    }

    /** SQLite gives who may not write the lock of a reader instead, and says nothing. */
    @Test
    void isNotTakenOfAFileThatThisUserMayNotWrite() throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r-----"));
        assumeFalse(Files.isWritable(file), "root may write everything");

        RecordingException refused = assertThrows(
                RecordingException.class, () -> ReservedLock.take(file).close());

        assertTrue(String.valueOf(refused.getMessage()).contains("may not be written"), refused.getMessage());
    }
}
