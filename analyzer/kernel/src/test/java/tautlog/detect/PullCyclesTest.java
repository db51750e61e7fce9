package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Findings.Cycle;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** The gate is 800 N (0.02 of 40 kN). 100 Hz, 1 N a count. */
class PullCyclesTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Cycle> cycles(Traces trace) {
        return Outings.atHertz(100).samples(trace).detect(RIG).cycles();
    }

    @Test
    void countsFromTheStartToTheEndOfThePullOnly() {
        // given a pull from 2 to 6 kN and back to 2 kN, then waves below pull_from until it closes
        Traces trace =
                Traces.atHertz(100).hold(0, 1).hold(2_000, 1).hold(6_000, 1).hold(2_000, 1);
        trace.hold(100, 0.5).hold(1_400, 0.5).hold(-900, 0.5).hold(1_400, 0.5).hold(0, 4);
        assertEquals(List.of(new Cycle(4_000, 8_000, 1), new Cycle(4_000, 8_000, 1)), cycles(trace));
    }

    @Test
    void takesInWhatLaterProvesToBelongToThePull() {
        Traces trace = Traces.atHertz(100)
                .hold(0, 1)
                .hold(2_000, 1)
                .hold(100, 1)
                .hold(1_400, 1)
                .hold(100, 1);
        trace.hold(6_000, 1).hold(0, 4);
        // then 100–1400 is a full cycle within the half from 100 to 6000
        assertEquals(
                List.of(new Cycle(1_300, 1_500, 2), new Cycle(1_900, 2_100, 1), new Cycle(5_900, 6_100, 1)),
                cycles(trace));
    }

    @Test
    void leavesOutWhatIsTooShortToBeAPull() {
        assertEquals(
                List.of(),
                cycles(Traces.atHertz(100)
                        .hold(0, 1)
                        .samples(2_000, 10)
                        .samples(9_000, 19)
                        .hold(0, 4)));
    }
}
