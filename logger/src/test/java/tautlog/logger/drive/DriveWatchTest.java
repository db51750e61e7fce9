package tautlog.logger.drive;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.drive.DriveState.Stage;
import tautlog.logger.recorder.RecordingFiles;

/** What goes wrong in the watch itself; visits: {@link DriveVisitTest}, real drives: {@code DriveIT}. */
class DriveWatchTest {
    @TempDir
    Path folder;

    private DriveWatch watch(InstantSource clock) throws IOException {
        Path table = Files.writeString(
                folder.resolve("mountinfo"), "40 39 8:1 / /media/tautlog rw,nosuid - vfat /dev/sda1 rw\n");
        return new DriveWatch(
                Path.of("/media/tautlog"),
                new Mounts(table),
                new RecordingFiles(folder, "Upper"),
                Optional::empty,
                Optional::empty,
                new BeaconLamp(),
                clock);
    }

    @Test
    void livesOnWhenMemoryRunsOutAgainWhileThatIsTold() throws IOException {
        AtomicInteger asked = new AtomicInteger();
        DriveWatch watch = watch(() -> {
            if (asked.incrementAndGet() <= 3) {
                throw new OutOfMemoryError("in a test");
            }
            return Instant.EPOCH;
        });

        assertDoesNotThrow(watch::lookWhateverComes); // 1 in the look, 2 while it is told
        assertEquals(Stage.NONE, watch.state().stage());
        assertDoesNotThrow(watch::lookWhateverComes); // 3 in the look that tries it anew

        assertEquals(Stage.TROUBLE, watch.state().stage());
    }
}
