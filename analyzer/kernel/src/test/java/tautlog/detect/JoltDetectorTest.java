package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Jolt;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** A jolt rises by 8 kN (0.2 of 40 kN) above the least of 20 samples of at least 750 N. 100 Hz, 1 N a count. */
class JoltDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Jolt> jolts(Traces trace) {
        return Outings.atHertz(100).samples(trace).detect(RIG).of(Jolt.class);
    }

    @Test
    void goesFromTheLatestLeastToTheGreatestOfHalfASecond() {
        Traces trace = Traces.atHertz(100)
                .hold(2_000, 1)
                .of(1_900, 1_950, 9_900, 11_000)
                .hold(5_000, 2);
        assertEquals(List.of(new Jolt(100, 1_900, 103, 11_000, "straight", false)), jolts(trace));
    }

    @Test
    void isALowerBoundAtTheEndStop() {
        Traces stopped = Traces.atHertz(100).hold(2_000, 1).of(8_388_607).hold(2_000, 1);
        Traces below = Traces.atHertz(100).hold(2_000, 1).of(8_388_606).hold(2_000, 1);
        assertEquals(List.of(true), jolts(stopped).stream().map(Jolt::atLeast).toList());
        assertEquals(List.of(false), jolts(below).stream().map(Jolt::atLeast).toList());
    }

    @Test
    void needsTwentyLoadedSamplesBeforeIt() {
        assertEquals(
                1,
                jolts(Traces.atHertz(100).hold(0, 1).samples(1_000, 20).of(9_000))
                        .size());
        assertEquals(
                List.of(),
                jolts(Traces.atHertz(100).hold(0, 1).samples(1_000, 19).of(9_000)));
        assertEquals(List.of(), jolts(Traces.atHertz(100).samples(1_000, 40).of(8_999)));
    }

    @Test
    void opensAgainOnlyAfterItsWindow() {
        // given jumps at 100, at 150 (the window's last sample) and at 151
        Traces one = Traces.atHertz(100)
                .hold(1_000, 1)
                .of(9_000)
                .samples(1_000, 49)
                .of(9_000)
                .hold(1_000, 1);
        assertEquals(1, jolts(one).size());
        Traces two = Traces.atHertz(100)
                .hold(1_000, 1)
                .of(9_000)
                .samples(1_000, 50)
                .of(9_000)
                .hold(1_000, 1);
        assertEquals(2, jolts(two).size());
    }

    @Test
    void isHiddenByAShockButNotByASnapThatWasNone() {
        // given a line that tightens at 100 and jumps at 130, within the window of the snap that ends at 149
        Traces shock =
                Traces.atHertz(100).hold(0, 1).samples(1_000, 30).of(9_500).hold(1_000, 3);
        Traces none =
                Traces.atHertz(100).hold(0, 1).samples(1_000, 30).of(9_500).hold(9_000, 3);
        assertEquals(List.of(), jolts(shock));
        assertEquals(List.of(new Jolt(129, 1_000, 130, 9_500, "straight", false)), jolts(none));
    }

    @Test
    void opensAfterAShocksWindowEvenWhenAnEarlierOneWasHidden() {
        // given jumps at 130 (hidden) and 160 (not hidden, and within half a second of the first)
        Traces trace = Traces.atHertz(100)
                .hold(0, 1)
                .samples(1_000, 30)
                .of(9_500)
                .samples(1_000, 29)
                .of(9_400)
                .hold(1_000, 3);
        assertEquals(List.of(new Jolt(159, 1_000, 160, 9_400, "straight", false)), jolts(trace));
    }

    @Test
    void needsAllOfItsWindowInOneStretch() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(1_000, 1))
                .gap(1)
                .samples(Traces.atHertz(100).samples(1_000, 19).of(9_000));
        assertEquals(List.of(), outing.detect(RIG).of(Jolt.class));
    }
}
