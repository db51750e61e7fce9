package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.fixtures.Findings;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.sample.Calibration;

/** Against detectors that are given every frame at once, the plain form: a run that waits keeps no finding back. */
class QuietTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 10, 25, 50, 78, 500})
    void tellsEveryFindingWithTheFrameThatDecidesIt(int frame) {
        // given
        Outings outing = Outings.atHertz(500).framesOf(frame);
        for (int piece = 0; piece < 8; piece++) {
            outing.samples(Traces.afternoon(piece, 15_000 + 7 * piece), 0)
                    .gap(piece * piece * 20)
                    .hookup("main");
        }
        Findings told = new Findings();
        Findings atOnce = new Findings();
        Detection waiting = detection(told);
        Detection plain = detection(atOnce);
        TreeSet<String> kinds = new TreeSet<>();
        // when
        for (Outings.Call call : outing.tensionCalls()) {
            call.on(waiting);
            call.on(plain);
            plain.settle();
            // then
            assertEquals(atOnce.told().size(), told.told().size(), "at tick " + call.tick());
        }
        assertEquals(atOnce.told(), told.told());
        told.told().forEach(finding -> kinds.add(finding.kind()));
        assertTrue(kinds.containsAll(List.of("pull", "overload", "shock", "jolt", "drop")), kinds.toString());
    }

    private static Detection detection(Findings sink) {
        return new Detection(
                Outings.instrument(500, 8_388_607, 0),
                Rigs.withLimit("4000", "8000"),
                Calibration.of("0", "0.5"),
                sink);
    }
}
