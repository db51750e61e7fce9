package tautlog.desk.use;

import java.nio.file.Path;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroSource;

/**
 * A random outing, one count a newton: levels near the limits with spikes, gaps, open bridges, a shaft that comes early or late, and
 * hookups, zeros and inputs that begin inside frames.
 */
final class RandomOuting {
    private static final int TICK_HZ = 1_000_000;
    private static final long SHAFT_TICKS = 50_000;
    private static final int[] HERTZ = {10, 100, 500};
    private static final int[] LEVELS = {0, 0, 100, 749, 750, 1_499, 1_500, 4_000, 9_000, 16_000, 30_000};
    private static final int[] RPM = {0, 50, 200, 350, 540, 600};
    private static final String[] HOOKUPS = {"straight", "round-the-corner", "nobody"};

    private final Random random;
    private final OutingWriter outing;
    private final int hertz;
    private final long firstTick;
    private final int longestFrame;
    private long number;
    private long shaftTick;
    private long pulses;
    private long phaseTicks;
    private int rpm = 540;

    private RandomOuting(Random random, OutingWriter outing, int hertz) {
        this.random = random;
        this.outing = outing;
        this.hertz = hertz;
        number = random.nextBoolean() ? 0 : random.nextInt(5_000);
        firstTick = random.nextInt(3) == 0 ? 0 : random.nextInt(100_000_000);
        longestFrame = 1 + random.nextInt(60);
        shaftTick = firstTick;
    }

    /** Writes one into a new file of {@code folder}. */
    static Path write(Path folder, long seed) throws RecordingException {
        Random random = new Random(seed);
        Path file = folder.resolve("outing-" + seed + ".tautlog");
        int hertz = HERTZ[random.nextInt(HERTZ.length)];
        Instrument instrument = new Instrument("TL-0001", 1, 0, seed + 1, TICK_HZ, hertz * 1_000L, 8_388_607, 1);
        try (RecordingWriter recording = RecordingWriter.open(file, "upper")) {
            OutingWriter outing = recording.begin(new OutingStart(
                    instrument,
                    SampleDay.rigToml(),
                    CellCalibration.written(Calibration.of("0", "1")),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            new RandomOuting(random, outing, hertz).tell();
            if (random.nextBoolean()) {
                outing.end();
            }
            outing.commit();
        }
        return file;
    }

    private long tick() {
        return firstTick + number * TICK_HZ / hertz;
    }

    private void tell() throws RecordingException {
        outing.clock(tick(), 1_772_442_000_000_000L);
        int pieces = 5 + random.nextInt(25);
        for (int piece = 0; piece < pieces; piece++) {
            int level = LEVELS[random.nextInt(LEVELS.length)];
            int flags = random.nextInt(10) == 0 ? 2 : 0;
            for (int left = 1 + random.nextInt(hertz * 4); left > 0; left -= longestFrame) {
                frame(level, flags, Math.min(left, longestFrame));
            }
        }
    }

    private void frame(int level, int flags, int n) throws RecordingException {
        int[] counts = new int[n];
        for (int i = 0; i < n; i++) {
            counts[i] = level + random.nextInt(40) + (random.nextInt(400) == 0 ? 5_000 : 0);
        }
        shaftUpTo(tick() + random.nextInt(600_000) - 300_000);
        eventsInside(n);
        outing.tension(number, tick(), flags, counts, 0, n);
        number += n;
        if (random.nextInt(200) == 0) {
            number += 1 + random.nextInt(2 * hertz);
        }
    }

    private void eventsInside(int n) throws RecordingException {
        if (random.nextInt(60) == 0) {
            outing.hookup(number + random.nextInt(n), HOOKUPS[random.nextInt(HOOKUPS.length)], HookupSource.SELECTOR);
        }
        if (random.nextInt(60) == 0) {
            outing.zero(number + random.nextInt(n), random.nextInt(600) - 300, ZeroSource.SLACK);
        }
        if (random.nextInt(60) == 0) {
            outing.input(number + random.nextInt(n), tick(), random.nextInt(3), random.nextInt(8), random.nextInt(8));
        }
    }

    private void shaftUpTo(long tick) throws RecordingException {
        while (shaftTick + SHAFT_TICKS < tick) {
            shaftTick += SHAFT_TICKS;
            if (random.nextInt(40) == 0) {
                rpm = RPM[random.nextInt(RPM.length)];
            }
            long[] ticks = new long[1];
            int n = 0;
            phaseTicks += rpm > 0 ? SHAFT_TICKS : 0;
            if (rpm > 0 && phaseTicks >= 60L * TICK_HZ / rpm) {
                phaseTicks -= 60L * TICK_HZ / rpm;
                ticks[n++] = shaftTick - phaseTicks % SHAFT_TICKS;
                pulses++;
            }
            outing.shaft(shaftTick, pulses, ticks, n);
        }
    }
}
