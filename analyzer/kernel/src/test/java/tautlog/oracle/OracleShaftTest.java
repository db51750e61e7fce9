package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.oracle.TenHertz.only;
import static tautlog.oracle.TenHertz.outing;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.detect.Finding.StallEnd;

/** Cases worked out by hand, at {@link TenHertz}: readings of the shaft and stalls. */
class OracleShaftTest {
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
}
