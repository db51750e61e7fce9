package tautlog.logger.drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import tautlog.calibration.CellCalibration;
import tautlog.logger.LoggerFolder;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Recordings of some seconds, and of one sealed block at least. */
public final class SmallRecordings {
    public static final int SAMPLES = 20_000;
    private static final int FRAME = 50;
    private static final int PAGE = 1_024;

    private SmallRecordings() {}

    public static RecordingWriter open(Path file) throws IOException {
        return RecordingWriter.open(file, "upper-landing");
    }

    /** One outing more, and closes the file. */
    public static void closed(Path file, int boot) throws IOException {
        try (RecordingWriter writer = open(file)) {
            OutingWriter outing = outing(writer, boot);
            outing.end();
            outing.commit();
        }
    }

    /** An outing that goes on. */
    public static OutingWriter outing(RecordingWriter writer, int boot) throws IOException {
        OutingWriter outing = writer.begin(new OutingStart(
                new Instrument("TL-0001", 1, 0, boot, 1_000_000, 500_000, 8_388_607, 6),
                LoggerFolder.RIG,
                CellCalibration.written(Calibration.of("0", "0.01")),
                "tautlogd test",
                OutingStart.Source.INSTRUMENT));
        for (int number = 0; number < SAMPLES; number += FRAME) {
            int[] counts = new int[FRAME];
            for (int i = 0; i < FRAME; i++) {
                counts[i] = (number + i) * 7919 % 1_001;
            }
            outing.tension(number, number * 2_000L, 0, counts, 0, FRAME);
        }
        outing.commit();
        return outing;
    }

    /** Turns one bit in the middle of the samples, amid a page of the file: with its beginning SQLite says which page comes next. */
    static void damage(Path closed) throws IOException {
        byte[] bytes = Files.readAllBytes(closed);
        bytes[bytes.length / 2 / PAGE * PAGE + PAGE / 2] ^= 1;
        Files.write(closed, bytes, StandardOpenOption.TRUNCATE_EXISTING);
    }
}
