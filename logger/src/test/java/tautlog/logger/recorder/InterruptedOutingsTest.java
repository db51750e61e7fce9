package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.logger.LoggerFolder;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingName;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** What the start finds that the last end left undone; cut-off outings: {@code PowerCutIT}. */
class InterruptedOutingsTest {
    private static final OutingStart START = new OutingStart(
            new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6),
            LoggerFolder.RIG,
            CellCalibration.written(Calibration.of("0", "0.01")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);
    /** 2026-05-04, 07:00 UTC. */
    private static final long MORNING_MICROS = 1_777_878_000_000_000L;
    /** In an SQLite file's header; 1 is no log, 2 is write-ahead log (sqlite.org/fileformat2.html, 1.3). */
    private static final int WRITE_VERSION = 18;

    @TempDir
    Path folder;

    @Test
    void foldsAndNamesARecordingThatWasReadWhileItWasClosed() throws IOException {
        // given: begun while no clock was known, and a reader that outlives its close
        Path undated = folder.resolve("upper-landing_undated-1.tautlog");
        RecordingWriter writer = RecordingWriter.open(undated, "upper-landing");
        OutingWriter outing = writer.begin(START);
        outing.tension(0, 0, 0, new int[50], 0, 50);
        outing.clock(0, MORNING_MICROS);
        outing.end();
        outing.commit();
        try (Recording reader = Recording.open(undated)) {
            assertEquals(1, reader.outings().size());
            writer.close();
        }
        assertTrue(RecordingName.hasLog(undated), "else this shows nothing");
        RecordingFiles files = new RecordingFiles(folder, "upper-landing");

        // when
        int finished = new InterruptedOutings(files).finishAll(files.dated(MORNING_MICROS));

        // then
        Path named = folder.resolve("upper-landing_2026-05-04.tautlog");
        assertEquals(0, finished);
        assertEquals(List.of(named), files.there());
        assertFalse(RecordingName.hasLog(named));
        assertEquals(1, Files.readAllBytes(named)[WRITE_VERSION]);
        assertEquals(Optional.of(MORNING_MICROS), RecordingTimes.of(named).began());
    }
}
