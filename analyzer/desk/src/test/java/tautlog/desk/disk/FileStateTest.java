package tautlog.desk.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileStateTest {
    private static final Instant WRITTEN = Instant.parse("2026-05-04T07:00:00Z");

    @TempDir
    Path folder;

    private Path file(String name, Instant written) throws Exception {
        Path file = Files.writeString(folder.resolve(name), name);
        Files.setLastModifiedTime(file, FileTime.from(written));
        return file;
    }

    /** A commit may show in the log's size and time 60 s before it can be read. */
    @Test
    void isSettledAMinuteAfterFileAndLogWereWritten() throws Exception {
        Path day = file("day.tautlog", WRITTEN);
        assertFalse(FileState.of(day).isSettled(WRITTEN.plusSeconds(60)));
        assertTrue(FileState.of(day).isSettled(WRITTEN.plusSeconds(61)));

        file("day.tautlog-wal", WRITTEN.plusSeconds(30));
        assertFalse(FileState.of(day).isSettled(WRITTEN.plusSeconds(90)));
        assertTrue(FileState.of(day).isSettled(WRITTEN.plusSeconds(91)));
    }

    @Test
    void changesWithTheLogAndIsTheSameWithoutOneAndWithAnEmptyOne() throws Exception {
        Path day = file("day.tautlog", WRITTEN);
        FileState alone = FileState.of(day);

        Files.createFile(folder.resolve("day.tautlog-wal"));
        assertEquals(alone, FileState.of(day));

        file("day.tautlog-wal", WRITTEN);
        assertNotEquals(alone, FileState.of(day));
    }
}
