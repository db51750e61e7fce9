package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.detect.Known.NO;
import static tautlog.detect.Known.UNKNOWN;
import static tautlog.detect.Known.YES;
import static tautlog.oracle.TenHertz.only;
import static tautlog.oracle.TenHertz.outing;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;

/** Cases worked out by hand, at {@link TenHertz}: shocks, jolts and drops. */
class OracleSnapTest {
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
}
