package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Stall;
import tautlog.detect.Finding.StallEnd;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** Below 0.7 of the median of the last 5 s, in a pull; recovered at 0.9 of it. 100 Hz, 1 N a count. */
class StallDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Stall> stalls(Outings outing) {
        return outing.detect(RIG).of(Stall.class);
    }

    private static Outings pullFromFourToTenSeconds() {
        return Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 4).hold(5_000, 6).hold(0, 6));
    }

    @Test
    void lastsFromALowReadingToARecoveredOne() {
        Stall stall = stalls(pullFromFourToTenSeconds()
                        .shaft(0, 6, 600)
                        .shaft(6, 2, 300)
                        .shaft(8, 6, 600))
                .get(0);
        assertEquals(StallEnd.RECOVERED, stall.ended());
        assertEquals(600, stall.baselineRpm(), 1e-9);
        assertEquals(5_000, stall.counts());
        assertEquals(stall.startTick() / 10_000, stall.startNumber());
        assertEquals(true, stall.startTick() > 6_000_000 && stall.endTick() >= 8_100_000);
    }

    @Test
    void endsWithThePull() {
        Stall stall = stalls(pullFromFourToTenSeconds().shaft(0, 6, 600).shaft(6, 9, 300))
                .get(0);
        assertEquals(StallEnd.PULL_ENDED, stall.ended());
        assertEquals(9_990_000, stall.endTick(), "the tick of sample 999, the pull's last");
        assertEquals(300, stall.leastRpm(), 1e-9);
    }

    @Test
    void endsAtStandstill() {
        Stall stall = stalls(pullFromFourToTenSeconds().shaft(0, 6, 600).shaft(6, 9, 0))
                .get(0);
        assertEquals(StallEnd.STOPPED, stall.ended());
        assertEquals(0, stall.leastRpm());
    }

    @Test
    void needsAPullAndTwentyReadings() {
        Outings slack = Outings.atHertz(100).samples(Traces.atHertz(100).hold(0, 16));
        assertEquals(List.of(), stalls(slack.shaft(0, 6, 600).shaft(6, 9, 300)));
        assertEquals(
                List.of(), stalls(pullFromFourToTenSeconds().shaft(4, 1.6, 600).shaft(5.6, 0.2, 300)));
    }
}
