package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import tautlog.calibration.CellCalibration;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** A seeded outing as a list of calls, in the order in which a logger would make them. */
final class Story {
    static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);
    static final OutingStart START = new OutingStart(
            INSTRUMENT,
            "schema = 1\n# Förstner's winch\n",
            CellCalibration.written(Calibration.of("12.5", "0.01")),
            "tautlogd 0.1.0",
            OutingStart.Source.INSTRUMENT);

    /** One call. */
    interface Call {
        void on(Evidence sink);
    }

    private final List<Call> calls = new ArrayList<>();
    private final Random random;
    private long number = 500;
    private long tick = 1_000_000;
    private long pulses = 5_400;

    private Story(long seed) {
        random = new Random(seed);
    }

    /** Everything that can happen, often: jumps, flags, extremes, odd ticks, all kinds of events. */
    static Story wild(long seed, int calls) {
        Story story = new Story(seed);
        for (int i = 0; i < calls; i++) {
            story.anything();
        }
        return story;
    }

    /** 25 samples a frame at 500 Hz, noise of ±8 counts round a wandering level, a mark and a gap now and then. */
    static Story plain(long seed, int frames) {
        Story story = new Story(seed);
        for (int i = 0; i < frames; i++) {
            int[] counts = story.random.ints(25, -8, 9).toArray();
            story.tension(0, counts);
            if (i % 2 == 1) {
                story.shaft(5);
            }
            if (i % 20 == 0) {
                story.health();
                story.clock();
            }
        }
        return story;
    }

    private void anything() {
        int dice = random.nextInt(100);
        if (dice < 60) {
            number += random.nextInt(20) == 0 ? 1 + random.nextInt(100_000) : 0;
            tension(random.nextInt(30) == 0 ? random.nextInt(256) : 0, wildCounts(1 + random.nextInt(78)));
        } else if (dice < 80) {
            shaft(random.nextInt(10) == 0 ? 60 : random.nextInt(7));
        } else if (dice < 84) {
            health();
        } else if (dice < 88) {
            clock();
        } else if (dice < 92) {
            long at = number + random.nextInt(3);
            long now = tick;
            int selector = random.nextInt(9);
            calls.add(sink -> sink.input(at, now, selector, 7, selector & 7));
        } else if (dice < 95) {
            long at = number;
            String id = "hookup-" + random.nextInt(3);
            HookupSource by = HookupSource.values()[random.nextInt(4)];
            calls.add(sink -> sink.hookup(at, id, by));
        } else if (dice < 97) {
            long at = number + random.nextInt(50);
            String note = random.nextBoolean() ? "" : "stump, ½ m ⚠";
            calls.add(sink -> sink.mark(at, note));
        } else if (dice < 98) {
            long at = number;
            int shift = random.nextInt(4_000) - 2_000;
            ZeroSource by = ZeroSource.values()[random.nextInt(2)];
            calls.add(sink -> sink.zero(at, shift, by));
        } else if (dice < 99) {
            int east = random.nextInt(1_000_000);
            Position position = new Position(tick, -412_345_678 + east, 1_467_654_321 + east, random.nextInt(12), 9);
            calls.add(sink -> sink.position(position));
        } else {
            Map<String, Long> rejected = new TreeMap<>(Map.of("BAD_CRC", (long) random.nextInt(1000)));
            Tally tally = new Tally(rejected, random.nextInt(50), random.nextInt(5), 0);
            calls.add(sink -> sink.tally(tally));
        }
    }

    private int[] wildCounts(int n) {
        int spread = 1 << random.nextInt(31);
        int base = random.nextInt(10) == 0 ? random.nextInt() : random.nextInt(16_000_000) - 8_000_000;
        int[] counts = new int[n];
        int ramp = random.nextInt(3) == 0 ? random.nextInt(2_000) - 1_000 : 0;
        for (int i = 0; i < n; i++) {
            counts[i] = random.nextInt(500) == 0
                    ? (random.nextBoolean() ? Integer.MAX_VALUE : Integer.MIN_VALUE)
                    : base + ramp * i + random.nextInt(spread);
        }
        return counts;
    }

    private void tension(int flags, int[] counts) {
        long n = number;
        long t = tick;
        calls.add(sink -> sink.tension(n, t, flags, counts, 0, counts.length));
        number += counts.length;
        tick += counts.length * 2_000L + random.nextInt(5) - 2;
    }

    private void shaft(int n) {
        long[] ticks = new long[n];
        for (int i = 0; i < n; i++) {
            ticks[i] = tick - (n - i) * 18_519L + random.nextInt(100);
        }
        pulses += n + (random.nextInt(20) == 0 ? random.nextInt(90) : 0);
        long count = pulses;
        long now = tick + random.nextInt(50);
        calls.add(sink -> sink.shaft(now, count, ticks, n));
    }

    private void health() {
        long now = tick;
        int millivolts = 4_900 + random.nextInt(200);
        calls.add(sink -> sink.health(now, millivolts, -125, 3));
    }

    private void clock() {
        long now = tick;
        calls.add(sink -> sink.clock(now, 1_777_881_600_000_000L + now + random.nextInt(1)));
    }

    int size() {
        return calls.size();
    }

    void tell(Evidence sink) {
        tell(sink, 0, calls.size());
    }

    void tell(Evidence sink, int from, int to) {
        calls.subList(from, to).forEach(call -> call.on(sink));
    }

    /** What a replay must say. */
    List<String> lines() {
        EvidenceLog log = new EvidenceLog();
        tell(log);
        return log.lines();
    }
}
