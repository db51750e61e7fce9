package tautlog.logger.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;

/** Closed recordings of days before, of noise that hardly packs: about two bytes a sample. */
final class OldRecordings {
    private static final String WINCH = "upper-landing";
    private static final int NOISE = 32_767;
    private static final int SAMPLES_A_COMMIT = 16_384;

    private OldRecordings() {}

    /** What was said live of an outing. */
    enum Told {
        NOTHING,
        A_SHOCK
    }

    /** One recording; an outing for each of {@code told}. */
    static Path write(Path folder, String day, int samplesAnOuting, Told... told) throws IOException {
        Path file = folder.resolve(WINCH + "_" + day + ".tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, WINCH)) {
            for (int i = 0; i < told.length; i++) {
                outing(writer, new Random(i), samplesAnOuting, told[i], i);
            }
        }
        return file;
    }

    private static void outing(RecordingWriter writer, Random random, int samples, Told told, int boot)
            throws IOException {
        OutingWriter outing = writer.begin(new OutingStart(
                new SmallInstrument(boot).instrument(),
                LoggerFolder.RIG,
                CellCalibration.written(Calibration.of("0", "0.01")),
                "tautlogd test",
                OutingStart.Source.INSTRUMENT));
        int rate = SmallInstrument.RATE;
        for (int number = 0; number < samples; number += rate) {
            int[] counts =
                    random.ints(Math.min(rate, samples - number), -NOISE, NOISE).toArray();
            outing.tension(number, 2_000L * number, 0, counts, 0, counts.length);
            outing.second(new Second(
                    number / rate,
                    number,
                    -NOISE,
                    NOISE,
                    0,
                    counts.length,
                    OptionalDouble.empty(),
                    "straight",
                    0.02,
                    0));
            if (number % SAMPLES_A_COMMIT < rate) {
                outing.commit();
            }
        }
        if (told == Told.A_SHOCK) {
            outing.finding(new Finding.Shock(500, 400, 520, 2_000_000, false, 0, "straight", false, false));
        }
        outing.end();
        outing.commit();
    }
}
