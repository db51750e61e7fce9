package tautlog.desk.pyramid;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroSource;

/** A seeded outing with frames of many lengths, gaps, an open bridge, moved zeros, single peaks, jitter of ticks, marks. */
final class RandomOuting {
    static final int HERTZ = 500;
    static final long START_MICROS = 1_777_878_000_000_000L;
    static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, HERTZ * 1_000L, 8_388_607, 6);
    static final OutingStart START = new OutingStart(
            INSTRUMENT,
            "schema = 1\n",
            CellCalibration.written(Calibration.of("12.5", "0.5")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);

    private final Random random;
    private long number = 500;
    private long tick = 1_000_000;
    private int level;

    RandomOuting(long seed) {
        random = new Random(seed);
    }

    static void write(Path file, long seed, int frames) throws IOException {
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(START);
            new RandomOuting(seed).tell(outing, frames);
            outing.end();
            outing.commit();
        }
    }

    void tell(Evidence outing, int frames) {
        if (number == 500) {
            outing.clock(tick, START_MICROS);
            outing.hookup(number, "straight", HookupSource.MARK);
        }
        for (int i = 0; i < frames; i++) {
            int chance = random.nextInt(1_000);
            if (chance < 4) {
                skip(1 + random.nextInt(chance == 0 ? 200_000 : 300));
            } else if (chance < 7) {
                outing.zero(number + random.nextInt(60), random.nextInt(200) - 100, ZeroSource.SLACK);
            } else if (chance < 9) {
                outing.mark(number, "mark " + number);
            }
            frame(outing, chance > 996 ? Evidence.FLAG_OPEN_BRIDGE : 0);
        }
    }

    private void skip(int samples) {
        number += samples;
        tick += samples * 2_000L;
    }

    private void frame(Evidence outing, int flags) {
        int n = 1 + random.nextInt(90);
        int[] counts = new int[n];
        for (int k = 0; k < n; k++) {
            level += random.nextInt(41) - 20;
            counts[k] = level + (random.nextInt(20_000) == 0 ? 50_000 + random.nextInt(100_000) : 0);
        }
        outing.tension(number, tick, flags, counts, 0, n);
        number += n;
        tick += n * 2_000L + random.nextInt(5) - 2;
    }
}
