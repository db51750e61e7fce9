package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Shock;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** Slack below 750 N for 0.1 s; a shock from 6 kN (0.15 of 40 kN) and twice the settled level. 100 Hz, 1 N a count. */
class ShockDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Shock> shocks(Traces trace) {
        return shocks(Outings.atHertz(100).samples(trace));
    }

    private static List<Shock> shocks(Outings outing) {
        return outing.detect(RIG).of(Shock.class);
    }

    @Test
    void isASnapTwiceAsHighAsWhatItSettlesTo() {
        // given s = 99, the peak at 102, settled at 4 kN
        Traces trace = Traces.atHertz(100).hold(0, 1).of(1_000, 5_000, 8_000).hold(4_000, 3);
        assertEquals(List.of(new Shock(99, 100, 102, 8_000, true, 8_000, "straight", false, false)), shocks(trace));
        Traces less = Traces.atHertz(100).hold(0, 1).of(1_000, 5_000, 7_999).hold(4_000, 3);
        assertEquals(List.of(), shocks(less));
    }

    @Test
    void isALowerBoundAtTheEndStop() {
        Traces stopped = Traces.atHertz(100).hold(0, 1).of(1_000, 8_388_607).hold(4_000, 3);
        Traces below = Traces.atHertz(100).hold(0, 1).of(1_000, 8_388_606).hold(4_000, 3);
        assertEquals(List.of(true), shocks(stopped).stream().map(Shock::atLeast).toList());
        assertEquals(List.of(false), shocks(below).stream().map(Shock::atLeast).toList());
    }

    @Test
    void needsTenSlackSamplesInARowAndSixKilonewtons() {
        assertEquals(
                List.of(),
                shocks(Traces.atHertz(100)
                        .hold(2_000, 1)
                        .samples(749, 9)
                        .of(8_000)
                        .hold(900, 3)));
        assertEquals(
                1,
                shocks(Traces.atHertz(100)
                                .hold(2_000, 1)
                                .samples(749, 10)
                                .of(8_000)
                                .hold(900, 3))
                        .size());
        assertEquals(List.of(), shocks(Traces.atHertz(100).hold(0, 1).of(5_999).hold(900, 3)));
        assertEquals(
                1, shocks(Traces.atHertz(100).hold(0, 1).of(6_000).hold(900, 3)).size());
    }

    @Test
    void takesTheEarliestOfEqualPeaksWithinHalfASecond() {
        Traces trace = Traces.atHertz(100)
                .hold(0, 1)
                .of(1_000, 8_000, 1_000, 8_000)
                .samples(1_000, 46)
                .of(20_000);
        Shock shock = shocks(trace.hold(1_000, 3)).get(0);
        assertEquals(101, shock.peakNumber());
    }

    @Test
    void doesNotKnowTheLevelWhenTheLineGoesSlackSoonAfter() {
        // given p = 100; samples 151 to 169 are 19 settled ones before the next slack run, then 20
        Traces nineteen =
                Traces.atHertz(100).hold(0, 1).of(8_000).samples(7_000, 69).hold(0, 1);
        assertEquals(List.of(new Shock(99, 100, 100, 8_000, false, 0, "straight", false, false)), shocks(nineteen));
        Traces twenty =
                Traces.atHertz(100).hold(0, 1).of(8_000).samples(7_000, 70).hold(0, 1);
        assertEquals(List.of(), shocks(twenty), "7000 N is known then, and 8000 N is not twice as much");
    }

    @Test
    void isNothingWhenTheOutingEndsTooSoonToKnow() {
        assertEquals(List.of(), shocks(Traces.atHertz(100).hold(0, 1).of(8_000).samples(1_000, 69)));
        assertEquals(
                1,
                shocks(Traces.atHertz(100).hold(0, 1).of(8_000).samples(1_000, 70))
                        .size());
    }

    @Test
    void marksAShortGapInWindowOrSettlingOnly() {
        Outings between = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 1).of(8_000).samples(1_000, 20))
                .gap(5)
                .samples(Traces.atHertz(100).hold(1_000, 3));
        assertEquals(true, shocks(between).get(0).hasGap());
        Outings after = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 1).of(8_000).samples(1_000, 150))
                .gap(5)
                .samples(Traces.atHertz(100).hold(1_000, 3));
        assertEquals(false, shocks(after).get(0).hasGap());
        Outings before = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 1))
                .gap(1)
                .samples(Traces.atHertz(100).of(8_000).hold(1_000, 3));
        assertEquals(List.of(), shocks(before));
    }

    @Test
    void countsALevelBelowZeroAsAShockByItsPeakAlone() {
        assertEquals(
                1,
                shocks(Traces.atHertz(100).hold(0, 1).of(8_000).samples(800, 50).hold(-100, 3))
                        .size());
    }
}
