package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tautlog.detect.Known.NO;
import static tautlog.detect.Known.UNKNOWN;
import static tautlog.detect.Known.YES;
import static tautlog.oracle.TenHertz.TEN_HERTZ;
import static tautlog.oracle.TenHertz.only;
import static tautlog.oracle.TenHertz.outing;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Cases worked out by hand, at {@link TenHertz}: pulls, and thresholds in decimals. */
class OraclePullTest {
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
}
