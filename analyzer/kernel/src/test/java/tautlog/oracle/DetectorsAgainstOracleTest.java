package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.fixtures.Rigs;
import tautlog.rig.DetectSettings;
import tautlog.rig.Rig;

/** The streaming detectors say what the slow and obvious reading of {@code FINDINGS.md} says, to the sample. */
class DetectorsAgainstOracleTest {
    /** More seeds for a hunt: {@code -Dtautlog.seeds=100000}. */
    private static final int SEEDS = Integer.getInteger("tautlog.seeds", 700);

    private static final int FROM_SEED = Integer.getInteger("tautlog.fromSeed", 0);
    private static final int SHRINKING_ATTEMPTS = 5_000;

    @Test
    void agreeOnRandomOutingsHoweverShaftFramesAndSamplesAreInterleaved() {
        Replay.Order[] orders = {Replay.Order.SHAFT_FIRST, Replay.Order.SHAFT_LATE, Replay.Order.SHUFFLED};
        for (long seed = FROM_SEED; seed < FROM_SEED + SEEDS; seed++) {
            // given
            OutingData outing = RandomOutings.outing(seed);

            // when, then
            Answers oracle = Oracle.of(outing);
            assertAgreement("seed " + seed, outing, oracle, Replay.Order.BY_TICK);
            assertAgreement("seed " + seed, outing, oracle, orders[(int) (seed % orders.length)]);
        }
    }

    @Test
    void agreeWhereSlackLineComesInPassages() {
        int passages = 0;
        for (long seed = FROM_SEED; seed < FROM_SEED + SEEDS; seed++) {
            passages += toldInPassages(RandomOutings.outing(seed), seed).passages();
        }
        assertTrue(passages > SEEDS, passages + " passages were taken");
    }

    @Test
    void agreeWhereTheShaftTurnsUnderASlackLine() {
        long slackIntervals = 0;
        for (long seed = FROM_SEED; seed < FROM_SEED + SEEDS; seed++) {
            slackIntervals += toldInPassages(RandomOutings.slack(seed), seed).slackIntervals();
        }
        assertTrue(slackIntervals > SEEDS, slackIntervals + " intervals came as slack");
    }

    private static PassageReplay.Told toldInPassages(OutingData outing, long seed) {
        // given
        Answers oracle = Oracle.of(outing).withoutSeconds();

        // when
        PassageReplay.Told told = PassageReplay.through(outing, seed, oracle);

        // then
        assertEquals(List.of(), Difference.between(oracle, told.answers()), "seed " + seed);
        return told;
    }

    @Test
    void agreeHoweverFramesAreCut() {
        for (long seed = FROM_SEED; seed < FROM_SEED + SEEDS / 6; seed++) {
            // given no shaft, because other frames give the samples other ticks
            OutingData outing = RandomOutings.outing(seed).withShafts(List.of());
            OutingData recut = outing.withFrames(recut(outing, new Random(seed)));

            // when
            Answers oracle = Oracle.of(outing);
            Answers detectors = Replay.through(recut, Replay.Order.BY_TICK);

            // then
            String name = "seed " + seed + ", frames cut otherwise";
            assertEquals(List.of(), Difference.between(oracle, detectors), name);
        }
    }

    @Test
    void agreeWithAGapOfEveryLengthAtEveryPlaceOfAPull() {
        // given N(0.25 s) = 13 (12.5, halves up) and N(1 s) = 50
        OutingData whole = ScriptedPull.whole();
        for (int length : new int[] {1, 13, 14, 51}) {
            for (int place = 0; place < samples(whole); place++) {
                // when, then
                OutingData outing = ScriptedPull.without(whole, place, length);
                assertAgreement(length + " samples missing from " + place, outing);
            }
        }
    }

    @Test
    void agreeWithAnOpenBridgeAtEveryPlaceOfAPull() {
        OutingData whole = ScriptedPull.whole();
        for (int place = 0; place < samples(whole); place++) {
            // given, when, then
            OutingData outing = ScriptedPull.withOpenBridge(whole, place, place % 2 == 0 ? 4 : 15);
            assertAgreement("open bridge from " + place, outing);
        }
    }

    @Test
    void agreeWhereverTheOutingEndsOrBegins() {
        OutingData whole = ScriptedPull.whole();
        int samples = samples(whole);
        for (int place = 0; place <= samples; place++) {
            // given, when, then
            assertAgreement("ends at " + place, ScriptedPull.without(whole, place, samples));
            assertAgreement("begins at " + place, ScriptedPull.without(whole, 0, place));
        }
    }

    /** A peak is followed by more samples than its settling has, in one frame, while its window still goes on. */
    @Test
    void agreeOnASnapWhoseWindowOutlastsItsSettling() {
        DetectSettings d = DetectSettings.DEFAULTS;
        DetectSettings fourSeconds = new DetectSettings(
                d.pullFromNewtons(),
                d.pullForSeconds(),
                d.pullEndAfterSeconds(),
                d.bridgeSeconds(),
                d.overloadClear(),
                d.overloadQuietSeconds(),
                d.slackBelowNewtons(),
                d.slackForSeconds(),
                new BigDecimal("4"),
                d.shockFrom(),
                d.shockFactor(),
                d.joltWithinSeconds(),
                d.joltRise(),
                d.dropWithinSeconds(),
                d.dropFrom(),
                d.dropBy(),
                d.stallTo(),
                d.driftNewtons(),
                d.cycleGate());
        Rig plain = Rigs.withLimit("10000", "8000");
        Rig rig = new Rig(
                plain.winch(),
                plain.ratedPullNewtons(),
                plain.hookups(),
                fourSeconds,
                Optional.empty(),
                Optional.empty());
        for (int peakAt = 0; peakAt < 60; peakAt += 7) {
            // given N(1.5 s) = 75, N(4 s) = 200; the line snaps at the end of the first frame
            OutingData outing = OutingBuilder.inNewtons(50_000, rig)
                    .framesOf(128)
                    .hold(0, 100)
                    .hold(2_000, 30 + peakAt)
                    .samples(6_000)
                    .hold(2_100, 300)
                    .hold(0, 200)
                    .build();

            // when, then
            assertAgreement("peak after " + peakAt, outing);
            Answers oracle = Oracle.of(outing).withoutSeconds();
            for (long seed = 0; seed < 20; seed++) { // runs that no second cuts
                PassageReplay.Told told = PassageReplay.through(outing, seed, oracle);
                assertEquals(List.of(), Difference.between(oracle, told.answers()));
            }
            assertEquals(
                    1,
                    oracle.findings().stream()
                            .filter(finding -> finding.kind().equals("shock"))
                            .count());
        }
    }

    @Test
    void agreeOnOutingsOfJustTenMinutesWithoutAQuietStretch() {
        for (int samples = 599; samples <= 602; samples++) {
            // given, when, then
            OutingBuilder loaded = OutingBuilder.inNewtons(1_000, Rigs.withLimit("10000", "8000"));
            assertAgreement(samples + " samples", loaded.hold(1_500, samples).build());
        }
    }

    @Test
    void scriptedPullHoldsEverything() {
        // given, when
        var kinds = Oracle.of(ScriptedPull.whole()).findings().stream()
                .map(Finding::kind)
                .filter(kind -> !kind.equals("trouble"))
                .sorted()
                .collect(Collectors.joining(" "));

        // then
        assertEquals("drop jolt overload pull shock stall", kinds);
    }

    private static int samples(OutingData data) {
        return data.frames().stream().mapToInt(frame -> frame.counts().size()).sum();
    }

    private static void assertAgreement(String name, OutingData outing) {
        assertAgreement(name, outing, Oracle.of(outing), Replay.Order.BY_TICK);
    }

    private static void assertAgreement(String name, OutingData outing, Answers oracle, Replay.Order order) {
        if (!difference(outing, oracle, order).isEmpty()) {
            Predicate<OutingData> fails = candidate ->
                    !difference(candidate, Oracle.of(candidate), order).isEmpty();
            OutingData smallest = Shrinker.shrink(outing, fails, SHRINKING_ATTEMPTS);
            fail(name + ", " + order + ": they differ; the smallest outing found for which they do:\n"
                    + Shrinker.text(smallest)
                    + String.join("\n", difference(smallest, Oracle.of(smallest), order)));
        }
    }

    private static List<String> difference(OutingData outing, Answers oracle, Replay.Order order) {
        try {
            return Difference.between(oracle, Replay.through(outing, order));
        } catch (RuntimeException e) {
            return List.of("the detectors threw " + e + " at "
                    + List.of(e.getStackTrace()).subList(0, 3));
        }
    }

    /** The same samples with the same flags in other frames. */
    private static List<OutingData.Frame> recut(OutingData outing, Random random) {
        List<OutingData.Frame> recut = new ArrayList<>();
        for (OutingData.Frame frame : outing.frames()) {
            int from = 0;
            while (from < frame.counts().size()) {
                int to = Math.min(frame.counts().size(), from + 1 + random.nextInt(random.nextBoolean() ? 3 : 40));
                recut.add(new OutingData.Frame(
                        frame.number() + from,
                        frame.tick(),
                        frame.flags(),
                        frame.counts().subList(from, to)));
                from = to;
            }
        }
        return recut;
    }
}
