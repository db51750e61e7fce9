package tautlog.desk.use;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.sample.Instrument;

/**
 * A random outing as plain data: 10 samples a second, one count a newton, sample k at tick 100,000 · k, one shaft pulse a turn. Levels
 * hold for whole stretches, gaps have every length round those that matter.
 *
 * @param trueStartMicros when its first sample was taken
 * @param clock how the board's clock behaved
 */
record PlannedOuting(
        String winch, long boot, long trueStartMicros, Clock clock, List<Frame> frames, List<Shaft> shafts) {
    static final long TICKS = 100_000;
    static final int TICK_HZ = 1_000_000;
    private static final int[] LEVELS = {0, 100, 749, 750, 1_499, 1_500, 4_000, 9_000, 16_000};
    private static final int[] GAPS = {1, 3, 4, 12, 60};

    /** What was known of the time. */
    enum Clock {
        RIGHT,
        SET_LATE,
        MENDED,
        NEVER
    }

    /** Samples that came together; every count alike. */
    record Frame(long number, int n, int count, boolean open) {
        long tick() {
            return number * TICKS;
        }

        long last() {
            return number + n - 1;
        }
    }

    /** A shaft frame. */
    record Shaft(long tick, long pulses, boolean pulsed) {}

    static PlannedOuting random(Random random, String winch, long boot, long startMicros) {
        List<Frame> frames = new ArrayList<>();
        long number = 0;
        int pieces = 3 + random.nextInt(12);
        for (int i = 0; i < pieces; i++) {
            int level = LEVELS[random.nextInt(LEVELS.length)];
            for (int left = 1 + random.nextInt(90); left > 0; left -= 10) {
                int n = Math.min(10, left);
                frames.add(new Frame(number, n, level, random.nextInt(60) == 0));
                number += n;
            }
            if (random.nextInt(4) == 0) {
                number += GAPS[random.nextInt(GAPS.length)];
            }
        }
        Clock[] clocks = Clock.values();
        Clock clock = clocks[random.nextInt(clocks.length)];
        return new PlannedOuting(winch, boot, startMicros, clock, frames, shafts(random, number));
    }

    private static List<Shaft> shafts(Random random, long numbers) {
        List<Shaft> shafts = new ArrayList<>();
        if (random.nextInt(5) == 0) {
            return shafts;
        }
        long pulses = 0;
        boolean turning = false;
        boolean silent = false;
        for (long number = 1; number < numbers; number++) {
            turning ^= random.nextInt(40) == 0;
            silent = silent ? random.nextInt(20) > 0 : random.nextInt(120) == 0;
            pulses += turning ? 1 : 0;
            if (!silent) {
                shafts.add(new Shaft(number * TICKS, pulses, turning));
            }
        }
        return shafts;
    }

    Instrument instrument() {
        return new Instrument("TL-" + winch.length(), 1, 0, boot, TICK_HZ, 10_000, 8_388_607, 1);
    }

    long lastTick() {
        return frames.get(frames.size() - 1).tick();
    }

    /** UTC in microseconds at tick 0, as its clock fixes tell it once all are there. */
    OptionalLong startMicros() {
        return clock == Clock.NEVER ? OptionalLong.empty() : OptionalLong.of(trueStartMicros);
    }

    /** Asks before each frame whether somebody copies what is there so far. */
    interface Between {
        void frame(int index) throws RecordingException;
    }

    void write(OutingWriter outing, Between between) throws RecordingException {
        if (clock == Clock.RIGHT) {
            outing.clock(0, trueStartMicros);
        } else if (clock == Clock.MENDED) {
            outing.clock(0, trueStartMicros - 86_400_000_000L);
        }
        int shaft = 0;
        for (int i = 0; i < frames.size(); i++) {
            between.frame(i);
            Frame frame = frames.get(i);
            while (shaft < shafts.size() && shafts.get(shaft).tick() < frame.tick()) {
                write(outing, shafts.get(shaft++));
            }
            int[] counts = new int[frame.n()];
            java.util.Arrays.fill(counts, frame.count());
            outing.tension(frame.number(), frame.tick(), frame.open() ? 2 : 0, counts, 0, frame.n());
            if (i == frames.size() / 2 && (clock == Clock.SET_LATE || clock == Clock.MENDED)) {
                outing.clock(frame.tick(), trueStartMicros + frame.tick());
            }
        }
        while (shaft < shafts.size()) {
            write(outing, shafts.get(shaft++));
        }
    }

    private static void write(OutingWriter outing, Shaft shaft) {
        outing.shaft(shaft.tick(), shaft.pulses(), new long[] {shaft.tick()}, shaft.pulsed() ? 1 : 0);
    }
}
