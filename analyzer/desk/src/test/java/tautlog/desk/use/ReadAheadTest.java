package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.progress.Progress;
import tautlog.desk.report.LeftOut;
import tautlog.sample.Calibration;

/** A recording whose outings all count is read once: when its outings are asked for it may be gone. */
class ReadAheadTest {
    @TempDir
    Path folder;

    private UseHistory readingOnce() throws IOException {
        Progress thenGone = sofar -> {
            if (sofar.what().equals("files") && sofar.isLast()) {
                deleteAll();
            }
        };
        return UseHistory.of(
                List.of(folder),
                new UseSettings(Optional.empty(), "test", Optional.empty(), 1, thenGone, Instant::now));
    }

    private void deleteAll() {
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void readsNoRecordingASecondTime() throws IOException {
        SampleDay.write(folder);

        assertEquals(1, readingOnce().outings().size());
    }

    @Test
    void tellsOfAnOutingThatWasRefusedWhyWithoutReadingItAgain() throws IOException {
        SampleDay.write(folder);
        SampleDay.write(
                folder, "later.tautlog", 2, 7_200, "schema = 1\n", CellCalibration.written(Calibration.of("0", "1")));

        UseHistory history = readingOnce();

        assertEquals(1, history.outings().size());
        List<LeftOut.OfOuting> left = history.leftOut().outings();
        assertEquals(1, left.size());
        assertTrue(left.get(0).toString().contains("the rig stored in it cannot be read"), left.toString());
    }
}
