package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.calibration.CellCalibration;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * A small recording written and deleted before the line is opened: what the first commit has to load, a second on a slow board,
 * is there when the first sample comes, so that the second within which a sample is stored holds from the start.
 */
public final class TrialRecording {
    private static final Logger LOG = LoggerFactory.getLogger(TrialRecording.class);
    private static final String NAME = "tautlogd.trial";
    private static final int SAMPLES = 25;

    private TrialRecording() {}

    /** Writes it into {@code folder}; a disk that refuses is only told, because the recorder tries again and again. */
    public static void writeAndDelete(Path folder) {
        Path file = folder.resolve(NAME);
        try {
            delete(file);
            write(file);
        } catch (RecordingException refused) {
            LOG.warn("a trial recording was refused: {}", refused.getMessage());
        } catch (IOException undeletable) {
            LOG.warn("what an earlier start left cannot be deleted: {}", undeletable.getMessage());
        } finally {
            deleteQuietly(file);
        }
    }

    private static void write(Path file) throws RecordingException {
        Instrument instrument = new Instrument("trial", 0, 0, 0, 1_000_000, 500_000, 8_388_607, 1);
        OutingStart start = new OutingStart(
                instrument,
                "",
                CellCalibration.written(Calibration.of("0", "1")),
                "tautlogd",
                OutingStart.Source.INSTRUMENT);
        try (RecordingWriter writer = RecordingWriter.open(file, "trial")) {
            OutingWriter outing = writer.begin(start);
            outing.tension(0, 0, 0, new int[SAMPLES], 0, SAMPLES);
            outing.commit();
            outing.end();
            outing.commit();
        }
    }

    private static void deleteQuietly(Path file) {
        try {
            delete(file);
        } catch (IOException left) {
            LOG.debug("the trial recording stays: {}", left.getMessage());
        }
    }

    private static void delete(Path file) throws IOException {
        for (String part : new String[] {"", "-wal", "-shm", "-journal", "-lock"}) {
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + part));
        }
    }
}
