package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** Every kind of sensor trouble. Rated pull 40 kN, 100 Hz, 1 N a count. */
class TroubleTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Trouble> trouble(Outings outing) {
        return outing.detect(RIG).of(Trouble.class);
    }

    @Test
    void namesAGapOfMoreThanASecond() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 1))
                .gap(100)
                .samples(Traces.atHertz(100).hold(0, 1))
                .gap(101)
                .samples(Traces.atHertz(100).hold(0, 1));
        assertEquals(List.of(new Trouble(TroubleKind.GAP, 299, 401)), trouble(outing));
    }

    @Test
    void namesSamplesAtTheEndStop() {
        Outings outing =
                Outings.atHertz(100).samples(Traces.atHertz(100).of(0, -8_388_608, -8_388_608, -8_388_607, 8_388_607));
        assertEquals(
                List.of(new Trouble(TroubleKind.END_STOP, 1, 2), new Trouble(TroubleKind.END_STOP, 4, 4)),
                trouble(outing));
    }

    @Test
    void namesAnOpenBridgeFromItsFirstToItsLastSample() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 1))
                .openBridge(60)
                .gap(10)
                .openBridge(10)
                .samples(Traces.atHertz(100).hold(0, 1))
                .openBridge(1);
        assertEquals(
                List.of(new Trouble(TroubleKind.OPEN_BRIDGE, 100, 179), new Trouble(TroubleKind.OPEN_BRIDGE, 280, 280)),
                trouble(outing));
    }

    @Test
    void namesASampleAboveBothNeighbours() {
        Outings outing = Outings.atHertz(100).samples(Traces.atHertz(100).of(0, 8_001, 0, 8_000, 0));
        assertEquals(List.of(new Trouble(TroubleKind.ONE_SAMPLE_PEAK, 1, 1)), trouble(outing));
    }

    @Test
    void namesADriftOfTheZeroUntilItIsBack() {
        // given ten-second stretches at 0, 201, 1000 (pulling: 2 kN in it), -201, 200, 0
        Traces trace = Traces.atHertz(100)
                .hold(0, 10)
                .hold(201, 10)
                .hold(1_000, 5)
                .hold(2_000, 5)
                .hold(-201, 10)
                .hold(200, 10)
                .hold(0, 10);
        assertEquals(
                List.of(new Trouble(TroubleKind.ZERO_DRIFT, 1_000, 3_999)),
                trouble(Outings.atHertz(100).samples(trace)));
    }

    @Test
    void saysThatTheZeroWasNeverProven() {
        Traces tenMinutes = Traces.atHertz(100).hold(2_000, 600);
        assertEquals(List.of(), trouble(Outings.atHertz(100).samples(tenMinutes)));
        assertEquals(
                List.of(new Trouble(TroubleKind.ZERO_UNPROVEN, 0, 60_000)),
                trouble(Outings.atHertz(100).samples(tenMinutes.of(2_000))));
    }
}
