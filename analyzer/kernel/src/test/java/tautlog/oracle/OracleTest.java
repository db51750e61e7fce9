package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tautlog.detect.Known.NO;
import static tautlog.detect.Known.UNKNOWN;
import static tautlog.detect.Known.YES;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.detect.Finding.StallEnd;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Second;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/**
 * Cases worked out by hand from {@code FINDINGS.md}, so that the oracle and the detectors cannot be wrong together.
 *
 * <p>All at 10 samples a second with one count a newton and the default settings, so N(0.1 s) = 1, N(0.15) = 2 (1.5, halves up),
 * N(0.2) = 2, N(0.25) = 3 (2.5, halves up), N(0.3) = 3, N(0.5) = 5, N(1) = 10, N(1.5) = 15, N(2) = 20, N(3) = 30. The winch pulls
 * R = 10 000 N, the limit is L = 8 000 N.
 */
class OracleTest {
    private static final long TEN_HERTZ = 10_000;

    private static OutingBuilder outing() {
        return OutingBuilder.inNewtons(TEN_HERTZ, Rigs.withLimit("10000", "8000"));
    }

    private static <T extends Finding> List<T> only(Class<T> kind, OutingBuilder outing) {
        return Oracle.of(outing.build()).findings().stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    @Test
    void pullStartsAtTheFirstOfThreeAndEndsAtTheLastSampleAtPullFrom() {
        // given 0–9 slack; 10 and 11 at pull_from, 12 below: no pull; 13–17 at 1500, 18 at 749, 19 at 2500, then below
        // 750 for 30
        OutingBuilder outing = outing().hold(0, 10)
                .samples(1500, 1500, 1499)
                .hold(1500, 5)
                .samples(749, 2500)
                .hold(749, 30);

        // when
        var pulls = only(Finding.Pull.class, outing);

        // then start 13, end 19; sum 5 · 1500 + 749 + 2500 = 10 749 over 7 samples; share 2500/8000 = 0.3125: bands ≤
        // 0.25 (≤ 2000 N); 749 in 18 is a slack run (N = 1) that snaps to 2500 in 19 and goes slack in 20: one shock
        // inside
        // holds 6 samples, ≤ 0.5 one; closed by its 30th quiet sample, the outing's last (20 + 29 = 49)
        assertEquals(
                List.of(new Finding.Pull(
                        13,
                        19,
                        2500,
                        10_749,
                        7,
                        "straight",
                        true,
                        2500,
                        0,
                        1,
                        UNKNOWN,
                        false,
                        false,
                        false,
                        false,
                        List.of(6L, 1L, 0L, 0L, 0L),
                        0,
                        0)),
                pulls);
    }

    @Test
    void pullWithOneQuietSampleTooFewIsCutByTheEnd() {
        // given 3 samples that open it and 29 of the 30 that would close it
        OutingBuilder outing = outing().hold(0, 1).hold(1500, 3).hold(749, 29);

        // when
        Finding.Pull pull = only(Finding.Pull.class, outing).get(0);

        // then
        assertTrue(pull.cutByEnd() && !pull.cutByGap());
        assertEquals(3, pull.endNumber());
    }

    @Test
    void pullGoesOnOverAShortGapAndIsCutByALongOne() {
        // given 0–2 open; 3 missing (3 = N(bridge): short); 6 loaded; 4 missing (long); afterwards two samples are too
        // few to open one
        OutingBuilder outing =
                outing().hold(2000, 3).missing(3).hold(2000, 1).missing(4).hold(2000, 2);

        // when
        var pulls = only(Finding.Pull.class, outing);

        // then
        assertEquals(
                List.of(new Finding.Pull(
                        0,
                        6,
                        2000,
                        8000,
                        4,
                        "straight",
                        true,
                        2000,
                        0,
                        0,
                        UNKNOWN,
                        false,
                        true,
                        true,
                        false,
                        List.of(4L, 0L, 0L, 0L, 0L),
                        0,
                        0)),
                pulls);
    }

    @Test
    void shortGapWhileThePullClosesPausesItsTimerAndCounts() {
        // given 0–2 loaded, 15 quiet, 2 missing, 15 quiet: the 30th quiet sample is number 3 + 15 + 2 + 14 = 34
        OutingBuilder outing = outing().hold(2000, 3).hold(0, 15).missing(2).hold(0, 15);

        // when
        Finding.Pull pull = only(Finding.Pull.class, outing).get(0);

        // then it closed by its own condition, at the very last sample
        assertTrue(pull.hasGap() && !pull.cutByEnd());
    }

    @Test
    void pullIsHeldWhenAStandingShaftSpeaksForAllOfIt() {
        // given readings of 0 rpm every 0.1 s from 1.1 s on (the first SHAFT frame, at 0.1 s, is then more than 1 s
        // ago: at 1.2 s)
        OutingBuilder standing = outing().hold(0, 20).hold(2000, 10).hold(0, 30);
        standing.shaftFrames(0, 6000, milli -> false);
        // and one pulse a turn every 100 ms: 600 rpm
        OutingBuilder turning = outing().hold(0, 20).hold(2000, 10).hold(0, 30);
        turning.shaftFrames(0, 6000, milli -> milli % 100 == 0);

        // when
        Finding.Pull held = only(Finding.Pull.class, standing).get(0);
        Finding.Pull winched = only(Finding.Pull.class, turning).get(0);

        // then a reading at tick t = number speaks for the next number, up to the one the next reading sits at: all 10
        assertEquals(YES, held.held());
        assertEquals(10, held.heldSamples());
        assertEquals(NO, winched.held());
        assertEquals(10, winched.winchingSamples());
    }

    @Test
    void thresholdsAreMetExactlyInDecimals() {
        // given 0.1 N a count and zero at 3: 1500 N are 15 003 counts, 8000 N are 80 003; 0.1 is no double
        var instrument = new Instrument("TL-TEST", 1, 0, 7, 1_000_000, TEN_HERTZ, 8_388_607, 1);
        OutingBuilder outing = new OutingBuilder(
                        instrument, Rigs.withLimit("10000", "8000"), Calibration.of("3", "0.1"))
                .hold(15_002, 5)
                .hold(15_003, 3)
                .samples(80_003, 80_004);

        // when, then
        assertEquals(5, only(Finding.Pull.class, outing).get(0).startNumber());
        assertEquals(9, only(Finding.Overload.class, outing).get(0).startNumber());
    }

    @Test
    void overloadAtTheEndStopIsAtLeastThatMuch() {
        // given
        OutingBuilder outing = outing().hold(9000, 2).samples(8_388_607).hold(9000, 2);

        // when, then
        assertEquals(
                List.of(new Finding.Overload(0, 4, 5, 8_388_607, "straight", true, true, false, false, true)),
                only(Finding.Overload.class, outing));
    }

    @Test
    void pullShockAndJoltAtTheEndStopAreAtLeastThatMuchAndOneCountBelowTheyAreNot() {
        // given slack in 0 and 1, p = 2 at the converter's end stop or a count below it, settled at 1000 N in 3–22 (20
        // samples);
        // 23 = the same height again: a jolt from 22; 24–52 loaded, so that the pull is the outing's rest
        for (int height : new int[] {8_388_607, 8_388_606}) {
            OutingBuilder outing = outing().hold(0, 2)
                    .samples(height)
                    .hold(1000, 20)
                    .samples(height)
                    .hold(2000, 29);
            boolean atLeast = height == 8_388_607;

            // when, then
            assertEquals(
                    List.of(new Finding.Shock(1, 2, 2, height, true, 2000, "straight", atLeast, false)),
                    only(Finding.Shock.class, outing));
            assertEquals(
                    List.of(new Finding.Jolt(22, 1000, 23, height, "straight", atLeast)),
                    only(Finding.Jolt.class, outing));
            assertEquals(
                    List.of(atLeast),
                    only(Finding.Pull.class, outing).stream()
                            .map(Finding.Pull::atLeast)
                            .toList());
        }
    }

    @Test
    void overloadOpensAboveTheLimitOnlyAndCountsSamplesAbove() {
        // given exactly the limit: none; then 8001, 7600 (= 0.95 L) four times, 7601, 8500, 7600 five times
        OutingBuilder outing = outing().hold(0, 1)
                .samples(8000, 8001)
                .hold(7600, 4)
                .samples(7601, 8500)
                .hold(7600, 5)
                .hold(0, 1);

        // when
        var overloads = only(Finding.Overload.class, outing);

        // then from 2 to 2 + 4 + 1 + 1 = 8, two samples above
        assertEquals(
                List.of(new Finding.Overload(2, 8, 2, 8500, "straight", true, false, false, false, false)), overloads);
    }

    @Test
    void changeOfHookupSplitsAnOverloadAndNamingItAgainDoesNot() {
        // given straight (8000) and thin (3000); 9000 N in samples 0–2, 2000 in 3; straight named again at 1, thin at 4
        OutingBuilder outing = OutingBuilder.inNewtons(
                        TEN_HERTZ,
                        Rigs.of("10000", List.of(Rigs.hookup("thin", "3000"), Rigs.hookup("straight", "8000"))))
                .hookup("straight", HookupSource.SELECTOR)
                .samples(9000)
                .hookup("straight", HookupSource.MARK)
                .samples(9000, 9000, 2000)
                .hookup("thin", HookupSource.MARK)
                .samples(3001, 3000);

        // when
        var overloads = only(Finding.Overload.class, outing);

        // then the first is split, not cut; the second is cut by the end
        assertEquals(
                List.of(
                        new Finding.Overload(0, 2, 3, 9000, "straight", false, false, false, false, false),
                        new Finding.Overload(4, 4, 1, 3001, "thin", false, false, false, false, true)),
                overloads);
    }

    @Test
    void shockIsMeasuredAgainstTheMedianFromHalfASecondToOneAndAHalfAfterItsPeak() {
        // given slack in 0 and 1 (s = 1); 2: 800, 3: 4000 (p), 4–8: 900; then p + 5 = 8 < settling ≤ p + 15 = 18: ten
        // samples
        // 9–18: five of 2000 and five of 1990, median (1990 + 2000)/2 = 1995, twice 3990; 4000 ≥ 2 · 1995 = 3990
        OutingBuilder outing = outing().hold(749, 2)
                .samples(800, 4000)
                .hold(900, 5)
                .hold(2000, 5)
                .hold(1990, 5);

        // when
        var shocks = only(Finding.Shock.class, outing);

        // then
        assertEquals(List.of(new Finding.Shock(1, 2, 3, 4000, true, 3990, "straight", false, false)), shocks);
    }

    @Test
    void snapBelowTwiceItsSettledLevelIsNoShock() {
        // given the same with 2001 N throughout the settling: 4000 < 2 · 2001
        OutingBuilder outing =
                outing().hold(749, 2).samples(800, 4000).hold(900, 5).hold(2001, 10);

        // when, then
        assertEquals(List.of(), only(Finding.Shock.class, outing));
    }

    @Test
    void settledLevelIsUnknownWhenTheLineGoesSlackTooSoonAndNoFindingWhenTheOutingEndsTooSoon() {
        // given p = 2, settling (7, 17]; slack again at 10 leaves 8 and 9, fewer than 20
        OutingBuilder slackAgain =
                outing().hold(0, 2).samples(4000).hold(1000, 7).hold(0, 20);
        // given the outing's last sample at 16, one before 17
        OutingBuilder ends = outing().hold(0, 2).samples(4000).hold(1000, 14);

        // when, then
        assertEquals(
                List.of(new Finding.Shock(1, 2, 2, 4000, false, 0, "straight", false, false)),
                only(Finding.Shock.class, slackAgain));
        assertEquals(List.of(), only(Finding.Shock.class, ends));
    }

    @Test
    void gapInTheSlackRunLeavesNoSnapAndOneInTheSettlingIsSaid() {
        // given one sample missing between the slack run and the snap
        OutingBuilder torn = outing().hold(0, 2).missing(1).samples(4000).hold(1000, 20);
        // given p = 2, settling (7, 17] with 8 to 10 missing (3 is short): the median over 11–17, 7 samples of 1000
        OutingBuilder gap =
                outing().hold(0, 2).samples(4000).hold(1000, 5).missing(3).hold(1000, 7);

        // when, then
        assertEquals(List.of(), only(Finding.Shock.class, torn));
        assertEquals(
                List.of(new Finding.Shock(1, 2, 2, 4000, true, 2000, "straight", false, true)),
                only(Finding.Shock.class, gap));
    }

    @Test
    void joltRisesFromTheLatestLeastOfTheTwoSamplesBefore() {
        // given 1000 1000 then 3000 = 1000 + 0.2 R; greatest of j … j + 5 is 3500 at 7, 4000 comes one too late
        OutingBuilder outing = outing().hold(1000, 4)
                .samples(3000, 3000, 3000, 3500, 3500, 3000, 4000)
                .hold(3000, 10);

        // when
        var jolts = only(Finding.Jolt.class, outing);

        // then j = 4, window to 9; start 3, the latest of the 1000s in 2 and 3
        assertEquals(List.of(new Finding.Jolt(3, 1000, 7, 3500, "straight", false)), jolts);
    }

    @Test
    void joltLiesInNoShocksPeakWindow() {
        // given s = 1, shock window 2–6: 1000 1000 3000 at 2–4 is part of the shock; with 7 and 8 before it, 9 is
        // outside
        OutingBuilder inside = outing().hold(0, 2).samples(1000, 1000, 3000).hold(1000, 20);
        OutingBuilder outside =
                outing().hold(0, 2).samples(1500).hold(750, 6).samples(2750).hold(750, 20);

        // when, then
        assertEquals(List.of(), only(Finding.Jolt.class, inside));
        assertEquals(List.of(new Finding.Jolt(8, 750, 9, 2750, "straight", false)), only(Finding.Jolt.class, outside));
    }

    @Test
    void dropStartsAtTheLatestGreatestAndStaysSlackForTwoSeconds() {
        // given 2000 at 2 and 3, 401, then 400 = 0.2 · 2000 at 5 … the window before 5 is 3 and 4, so i = 3; 21 more
        // slack
        OutingBuilder slack = outing().hold(1000, 2)
                .samples(2000, 2000, 401, 400, 380)
                .samples(350)
                .hold(300, 20);
        OutingBuilder retensioned = outing().hold(2000, 3).hold(0, 20).samples(750);
        OutingBuilder shorter = outing().hold(2000, 3).hold(0, 20);

        // when
        var drops = only(Finding.Drop.class, slack);

        // then after = least of 5 … 7 (N(0.15) = 2); j + 20 = 25 is there (27 is the last)
        assertEquals(
                List.of(new Finding.Drop(3, 5, 2000, 350, YES, Finding.ShaftAfterDrop.UNKNOWN, UNKNOWN, UNKNOWN)),
                drops);
        // and j = 3, j + 20 = 23 is the sample at 750: no; without it the outing ends inside: unknown
        assertEquals(NO, only(Finding.Drop.class, retensioned).get(0).staysSlack());
        assertEquals(UNKNOWN, only(Finding.Drop.class, shorter).get(0).staysSlack());
    }

    @Test
    void dropTellsClutchBrakeAndWhatTheShaftDid() {
        // given a drop from sample 19 to 20, i at tick 1.9 s; pulses every 100 ms (600 rpm) to 2.0 s, then every 50 ms
        // (1200 rpm)
        OutingBuilder outing =
                outing().hold(0, 5).input(6, 2).hold(2000, 15).input(6, 4).hold(0, 30);
        outing.shaftFrames(0, 4000, milli -> milli % 100 == 0 || (milli > 2000 && milli % 50 == 0));

        // when
        Finding.Drop drop = only(Finding.Drop.class, outing).get(0);

        // then clutch (bit 1) engaged, brake (bit 2) off at i; 1200 > 1.1 · 600
        assertEquals(YES, drop.clutch());
        assertEquals(NO, drop.brake());
        assertEquals(Finding.ShaftAfterDrop.RAN_UP, drop.shaft());
    }

    @Test
    void stallRunsFromTheFirstLowReadingToRecovery() {
        // given 2000 N throughout; pulses every 100 ms to 5 s; one 200 ms later (5.2), then every 100 ms again. Reading
        // at 5.1 s: t − t_m =
        // 0.1 s, at most 600 rpm: 600; at 5.2: 60 / 0.2 = 300 < 0.7 · 600 = 420: stall; at 5.3: 600 ≥ 540: recovered
        OutingBuilder outing = outing().hold(2000, 80);
        outing.shaftFrames(0, 8000, milli -> milli % 100 == 0 && milli != 5100);

        // when
        var stalls = only(Finding.Stall.class, outing);

        // then
        assertEquals(List.of(new Finding.Stall(52, 5_200_000, 5_300_000, StallEnd.RECOVERED, 300, 600, 2000)), stalls);
    }

    @Test
    void stallEndsStoppedOneSecondAfterTheLastPulseOrWithThePull() {
        // given no pulse after 5 s: capped at 60/(t − 5): 5.2 s gives 300, … 6.0 s 60, 6.1 s is more than 1 s after: 0
        OutingBuilder stops = outing().hold(2000, 80);
        stops.shaftFrames(0, 8000, milli -> milli % 100 == 0 && milli <= 5000);
        // given the pull's last sample at 5.5 s
        OutingBuilder pullEnds = outing().hold(2000, 56).hold(0, 30);
        pullEnds.shaftFrames(0, 8000, milli -> milli % 100 == 0 && milli <= 5000);

        // when, then; least to 5.5 s: 60/0.5 = 120
        assertEquals(
                List.of(new Finding.Stall(52, 5_200_000, 6_100_000, StallEnd.STOPPED, 0, 600, 2000)),
                only(Finding.Stall.class, stops));
        assertEquals(
                List.of(new Finding.Stall(52, 5_200_000, 5_500_000, StallEnd.PULL_ENDED, 120, 600, 2000)),
                only(Finding.Stall.class, pullEnds));
    }

    @Test
    void shaftReadsNothingUntilAWholeTurnIsKnownSinceAGapInThePulses() {
        // given 3 pulses lost before the one at 0.25 s; a frame 40 ms after a reading
        OutingBuilder outing = outing().hold(0, 10)
                .shaft(100_000, 0, 100_000)
                .shaft(200_000, 0, 200_000)
                .shaft(240_000, 0)
                .shaft(300_000, 3, 250_000)
                .shaft(400_000, 0, 350_000)
                .shaft(500_000, 0);

        // when
        var readings = Oracle.of(outing.build()).readings();

        // then 600 at 0.2 s, none at 0.24 (40 ms) and 0.3 (one pulse), 600 at 0.4 s, at 0.5 s at most 60/0.15 = 400
        assertEquals(
                List.of(
                        new Answers.Reading(200_000, 600),
                        new Answers.Reading(400_000, 600),
                        new Answers.Reading(500_000, 400)),
                readings);
    }

    @Test
    void troubleIsTold() {
        // given an end stop in 2 and 3, open bridge in 4 and 5, a jump of 11 > N(1 s) = 10 from 6 to 18, a peak of 2001
        // at 19
        OutingBuilder outing = outing().hold(0, 2)
                .samples(8_388_607, 8_388_607)
                .openBridge(5, 5)
                .hold(0, 1)
                .missing(11)
                .samples(0, 2001, 0);

        // when
        var troubles = only(Finding.Trouble.class, outing);

        // then
        assertEquals(
                List.of(
                        new Finding.Trouble(TroubleKind.END_STOP, 2, 3),
                        new Finding.Trouble(TroubleKind.OPEN_BRIDGE, 4, 5),
                        new Finding.Trouble(TroubleKind.GAP, 6, 18),
                        new Finding.Trouble(TroubleKind.ONE_SAMPLE_PEAK, 19, 19)),
                troubles);
    }

    @Test
    void zeroDriftsWhenATenSecondMeanDiffersByMoreThanTheDrift() {
        // given stretches of 100: 0, 200 (not more than drift), 201 (more), one that is no quiet stretch (±100 is 2 %
        // of R), 201, 0
        OutingBuilder outing = outing().hold(0, 100).hold(200, 100).hold(201, 100);
        outing.hold(100, 50).hold(301, 50).hold(201, 100).hold(0, 100);

        // when, then one excursion from 200 to 499
        assertEquals(
                List.of(new Finding.Trouble(TroubleKind.ZERO_DRIFT, 200, 499)), only(Finding.Trouble.class, outing));
    }

    @Test
    void zeroIsUnprovenAfterMoreThanTenMinutesWithoutAQuietStretch() {
        // given 6001 and 6000 samples of 1500 N, which is no unloaded line
        OutingBuilder longer = outing().hold(1500, 6001);
        OutingBuilder shorter = outing().hold(1500, 6000);

        // when, then
        assertEquals(
                List.of(new Finding.Trouble(TroubleKind.ZERO_UNPROVEN, 0, 6000)), only(Finding.Trouble.class, longer));
        assertEquals(List.of(), only(Finding.Trouble.class, shorter));
    }

    @Test
    void secondsAreCountedFromTheFirstSample() {
        // given the first number 5; second 0 is 5–14 with 7 missing, second 1 is 15–24, of which 15 and 16 are there
        OutingBuilder outing =
                outing().startingAt(5).samples(0, 10).missing(1).hold(4000, 7).samples(8001, -1);
        // and a reading at 0.7 s, which sits at 7 … the latest present is 6; pulses at 0.6 and 0.7 s: 600 rpm
        outing.shaft(700_000, 0, 600_000, 700_000);

        // when
        var seconds = Oracle.of(outing.build()).seconds();

        // then sums 10 + 7 · 4000 and 8000; shares 4000/8000 and 8001/8000
        assertEquals(
                List.of(
                        new Second(0, 5, 0, 4000, 28_010, 9, OptionalDouble.of(600), "straight", 0.5, Second.GAP),
                        new Second(
                                1,
                                15,
                                -1,
                                8001,
                                8000,
                                2,
                                OptionalDouble.empty(),
                                "straight",
                                1.000125,
                                Second.OVER_LIMIT)),
                seconds);
    }

    @Test
    void rainflowOfTheStandardsExampleGivesItsTable() {
        // given the history of ASTM E1049-85, figure 6: -2 1 -3 5 -1 3 -4 4 -2, in units of 1000 N on top of 6000 N, as
        // one pull
        OutingBuilder outing = outing().hold(0, 1)
                .samples(4000, 7000, 3000, 11_000, 5000, 9000, 2000, 10_000, 4000)
                .hold(0, 30);

        // when
        var cycles = Oracle.of(outing.build()).cycles();

        // then ranges 3 (half), 4 (half and full), 6, 8, 8, 9 (halves); sums from 12 000 plus those of the points
        assertEquals(
                List.of(
                        new Answers.Cycle(3000, 11_000, 1),
                        new Answers.Cycle(4000, 10_000, 1),
                        new Answers.Cycle(4000, 14_000, 2),
                        new Answers.Cycle(6000, 14_000, 1),
                        new Answers.Cycle(8000, 12_000, 1),
                        new Answers.Cycle(8000, 14_000, 1),
                        new Answers.Cycle(9000, 13_000, 1)),
                cycles);
    }

    @Test
    void reversalSmallerThanTheGateIsNone() {
        // given a gate of 0.02 · 10 000 = 200 N: 2000 up to 3000, back 199, up to 3100, back 200, to 3000
        OutingBuilder outing =
                outing().hold(0, 1).samples(2000, 3000, 2801, 3100, 2900, 3000).hold(0, 30);

        // when, then points 2000, 3100, 2900, 3000: 1100 (half), 200 (half), 100 (half)
        assertEquals(
                List.of(
                        new Answers.Cycle(100, 5900, 1),
                        new Answers.Cycle(200, 6000, 1),
                        new Answers.Cycle(1100, 5100, 1)),
                Oracle.of(outing.build()).cycles());
    }

    @Test
    void emptyOutingHasNothingToTell() {
        // given, when
        Answers nothing = Oracle.of(outing().build());

        // then
        assertEquals(new Answers(List.of(), List.of(), List.of(), List.of(), List.of()), nothing);
    }
}
