package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Findings;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.PlainCounts;
import tautlog.sample.QuietEvidence;

/** What must hold for all detectors together: nothing depends on how evidence is cut or on the order of its two streams. */
class DetectionTest {
    private static final Rig RIG = Rigs.of(
            "40000",
            List.of(Rigs.hookup("strong", "20000"), Rigs.hookup("weak", "9000"), Rigs.hookup("odd", "1234.56789")));
    private static final int[] RATES = {1, 3, 10, 100, 500, 4_000};

    /** An outing with everything in it: slack, snaps, ramps, spikes, gaps, open bridges, hookups, switches, a shaft. */
    private static Outings wild(long seed) {
        Random random = new Random(seed);
        int hertz = RATES[random.nextInt(RATES.length)];
        Outings outing = Outings.atHertz(hertz).framesOf(1 + random.nextInt(78));
        int pieces = hertz > 500 ? 6 : 20 + random.nextInt(20);
        double samples = 0;
        for (int i = 0; i < pieces; i++) {
            Traces trace = wildPiece(random, hertz);
            samples += trace.size();
            outing.samples(trace);
            samples += between(outing, random, hertz);
        }
        double seconds = samples / hertz;
        for (double at = 0; at < seconds; ) {
            double length = 0.3 + random.nextInt(80) / 10.0;
            int[] speeds = {0, 50, 300, 350, 500, 540, 600};
            outing.shaft(at, length, speeds[random.nextInt(speeds.length)]);
            at += length + (random.nextInt(4) == 0 ? random.nextInt(30) / 10.0 : 0);
        }
        return outing;
    }

    private static Traces wildPiece(Random random, int hertz) {
        int[] levels = {0, 0, 0, 400, 749, 750, 1_000, 1_499, 1_500, 3_000, 6_000, 9_001, 12_000, 20_001, 45_000, -5_000
        };
        Traces trace = Traces.atHertz(hertz);
        int parts = 1 + random.nextInt(5);
        for (int i = 0; i < parts; i++) {
            int level = levels[random.nextInt(levels.length)] + random.nextInt(20);
            switch (random.nextInt(5)) {
                case 0 -> trace.ramp(level, random.nextInt(100) / 50.0);
                case 1 -> trace.of(level);
                default -> trace.hold(level, random.nextInt(150) / 50.0);
            }
        }
        return trace;
    }

    private static int between(Outings outing, Random random, int hertz) {
        switch (random.nextInt(8)) {
            case 0 -> outing.hookup(new String[] {"strong", "weak", "odd", "nobody knows"}[random.nextInt(4)]);
            case 1 -> outing.input(random.nextInt(8), random.nextInt(8));
            case 2 -> {
                int missing = 1 + random.nextInt(hertz / 2 + 2);
                outing.gap(missing);
                return missing;
            }
            case 3 -> {
                int flagged = 1 + random.nextInt(hertz + 2);
                outing.openBridge(flagged);
                return flagged;
            }
            default -> {
                // nothing between the pieces
            }
        }
        return 0;
    }

    private static void assertSame(Findings expected, Findings actual) {
        assertEquals(expected.sorted(), actual.sorted());
        assertEquals(expected.seconds(), actual.seconds());
        assertEquals(expected.cycles(), actual.cycles());
        assertEquals(expected.readings(), actual.readings());
    }

    @Property(tries = 60)
    void givesTheSameInWhateverOrderShaftFramesAndSamplesCome(@ForAll @IntRange(max = 1_000_000) int seed) {
        // given
        Outings outing = wild(seed);
        Calibration calibration = Calibration.of("12.5", "0.97");
        Findings inOrder = outing.detect(RIG, calibration);
        // when
        List<Outings.Call> merged = merged(outing, new Random(seed));
        // then
        assertSame(inOrder, outing.detect(merged, RIG, calibration));
    }

    /** The streams of samples and shaft frames, merged at random up to eight seconds off. */
    private static List<Outings.Call> merged(Outings outing, Random random) {
        List<Outings.Call> merged = new ArrayList<>();
        Deque<Outings.Call> tension = new ArrayDeque<>(outing.tensionCalls());
        Deque<Outings.Call> shaft = new ArrayDeque<>(outing.shaftCalls());
        while (!tension.isEmpty() && !shaft.isEmpty()) {
            long late = random.nextInt(16_000_000) - 8_000_000;
            boolean takeShaft =
                    shaft.getFirst().tick() + late < tension.getFirst().tick();
            merged.add((takeShaft ? shaft : tension).removeFirst());
        }
        merged.addAll(tension);
        merged.addAll(shaft);
        return merged;
    }

    /** Hands the samples on as a replay by runs does: once so many wait, before an event, at the end of a stretch. */
    private static final class ByRuns extends QuietEvidence {
        private final Detection detection;
        private final Random random;
        private int[] waiting = new int[0];
        private int flags;
        private long next;

        ByRuns(Detection detection, long seed) {
            this.detection = detection;
            random = new Random(seed);
        }

        @Override
        public void tension(long number, long tick, int frameFlags, int[] counts, int from, int n) {
            if (number != next || frameFlags != flags) {
                flush(1);
            }
            detection.frame(number, tick, frameFlags, n);
            flags = frameFlags;
            next = number + n;
            if ((flags & FLAG_OPEN_BRIDGE) == 0) {
                int[] both = Arrays.copyOf(waiting, waiting.length + n);
                System.arraycopy(counts, from, both, waiting.length, n);
                waiting = both;
                flush(random.nextInt(16) == 0 ? 1 : 128);
            }
        }

        private void flush(int least) {
            while (waiting.length >= least) {
                int n = Math.min(waiting.length, random.nextBoolean() ? 128 : 1 + random.nextInt(128));
                detection.run(next - waiting.length, PlainCounts.copyOf(waiting, 0, n));
                waiting = Arrays.copyOfRange(waiting, n, waiting.length);
            }
        }

        @Override
        public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
            detection.shaft(tick, pulses, pulseTicks, n);
        }

        @Override
        public void input(long atNumber, long tick, int selector, int present, int state) {
            flush(1);
            detection.input(atNumber, tick, selector, present, state);
        }

        @Override
        public void hookup(long atNumber, String id, HookupSource by) {
            flush(1);
            detection.hookup(atNumber, id, by);
        }

        @Override
        public void end() {
            flush(1);
            detection.end();
        }
    }

    @Property(tries = 300)
    void givesTheSameByRuns(@ForAll @IntRange(max = 1_000_000) int seed) {
        Outings outing = wild(seed);
        Calibration calibration = Calibration.of("-3", "1.03");
        Findings whole = outing.detect(RIG, calibration);
        Findings cut = new Findings();
        ByRuns byRuns = new ByRuns(new Detection(outing.instrument(), RIG, calibration, cut), seed);
        merged(outing, new Random(seed)).forEach(call -> call.on(byRuns));
        byRuns.end();
        assertSame(whole, cut);
    }

    @Property(tries = 20)
    void givesTheSameHoweverSamplesAreCutIntoFrames(@ForAll @IntRange(max = 1_000_000) int seed) {
        int[] trace = wildPieces(seed);
        Findings large = Outings.atHertz(100).framesOf(5_000).samples(trace, 0).detect(RIG);
        Findings single = Outings.atHertz(100).framesOf(1).samples(trace, 0).detect(RIG);
        assertSame(large, single);
    }

    private static int[] wildPieces(long seed) {
        Random random = new Random(seed);
        List<int[]> pieces = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            pieces.add(wildPiece(random, 100).counts());
        }
        return pieces.stream().flatMapToInt(java.util.Arrays::stream).toArray();
    }

    @Test
    void theWildOutingsHoldFindingsOfEveryKind() {
        List<String> kinds = new ArrayList<>();
        for (int seed = 0; seed < 60; seed++) {
            wild(seed).detect(RIG).told().forEach(finding -> kinds.add(finding.kind()));
        }
        for (String kind : List.of("pull", "overload", "shock", "jolt", "drop", "stall", "trouble")) {
            assertTrue(kinds.contains(kind), kind);
        }
    }

    @Test
    void takesCountsOfTheFullRangeOfAnInt() {
        Instrument instrument = Outings.instrument(100, Integer.MAX_VALUE, 0);
        Findings findings = new Findings();
        Detection detection = new Detection(instrument, RIG, Calibration.of("0", "0.00001"), findings);
        int[] counts = new int[400];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = i % 2 == 0 ? Integer.MAX_VALUE : Integer.MIN_VALUE;
        }
        detection.tension(0, 0, 0, counts, 0, counts.length);
        detection.end();
        assertEquals(
                -200, findings.seconds().stream().mapToLong(Second::countSum).sum());
        // then every upper sample but the first is a peak of one sample, and the end stop holds throughout
        assertEquals(199 + 1, findings.of(Finding.Trouble.class).size());
    }
}
