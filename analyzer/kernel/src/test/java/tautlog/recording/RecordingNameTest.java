package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingNameTest {
    private static final Instant BEGIN = Instant.parse("2026-05-04T23:59:59.9Z");

    @TempDir
    Path folder;

    private static String name(Path file) {
        return file.getFileName().toString();
    }

    @Test
    void namesTheWinchAndTheUtcDay() {
        assertEquals("winch-1_2026-05-04.tautlog", name(RecordingName.dated(folder, "winch-1", BEGIN)));
    }

    @Test
    void countsOnWhenANameIsTaken() throws IOException {
        Files.createFile(folder.resolve("w_2026-05-04.tautlog"));
        assertEquals("w_2026-05-04_2.tautlog", name(RecordingName.datedAndFree(folder, "w", BEGIN)));
        Files.createFile(folder.resolve("w_2026-05-04_2.tautlog"));
        assertEquals("w_2026-05-04_3.tautlog", name(RecordingName.datedAndFree(folder, "w", BEGIN)));
    }

    @Test
    void numbersRecordingsThatKnowNoDay() throws IOException {
        assertEquals("w_undated-1.tautlog", name(RecordingName.undated(folder, "w")));
        Files.createFile(folder.resolve("w_undated-1.tautlog"));
        assertEquals("w_undated-2.tautlog", name(RecordingName.undated(folder, "w")));
    }

    @Test
    void makesAnyWinchNameSafe() {
        assertEquals("forstner-7-1", RecordingName.safe("Förstner 7/1"));
        assertEquals("winch", RecordingName.safe("../.."));
        assertEquals("winch", RecordingName.safe("滑车"));
        assertEquals(64, RecordingName.safe("x".repeat(300)).length());
    }
}
