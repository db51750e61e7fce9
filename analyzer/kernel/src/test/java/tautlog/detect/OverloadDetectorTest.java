package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Overload;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** Limit 10 kN, clear at 9.5 kN, quiet 0.5 s. 100 Hz, 1 N a count. */
class OverloadDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "10000");

    private static List<Overload> overloads(Outings outing) {
        return outing.detect(RIG).of(Overload.class);
    }

    @Test
    void beginsAboveTheLimitAndNotAtIt() {
        Traces trace =
                Traces.atHertz(100).of(10_000, 10_001, 12_000, 10_000, 10_001).hold(9_500, 1);
        Overload over = overloads(Outings.atHertz(100).samples(trace)).get(0);
        assertEquals(new Overload(1, 4, 3, 12_000, "straight", true, false, false, false, false), over);
    }

    @Test
    void isOneWhileItIsQuietForLessThanHalfASecond() {
        Traces trace = Traces.atHertz(100)
                .of(11_000)
                .samples(9_500, 49)
                .of(9_501)
                .samples(9_500, 49)
                .of(11_000);
        assertEquals(
                1, overloads(Outings.atHertz(100).samples(trace.hold(0, 1))).size());
        Traces longer =
                Traces.atHertz(100).of(11_000).samples(9_500, 50).of(11_000).hold(0, 1);
        assertEquals(2, overloads(Outings.atHertz(100).samples(longer)).size());
    }

    @Test
    void goesOnAcrossAShortGapAndIsCutByALongOne() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).of(11_000))
                .gap(25)
                .samples(Traces.atHertz(100).of(11_000))
                .gap(26)
                .samples(Traces.atHertz(100).of(11_000));
        assertEquals(
                List.of(
                        new Overload(0, 26, 2, 11_000, "straight", true, false, true, true, false),
                        new Overload(53, 53, 1, 11_000, "straight", true, false, false, false, true)),
                overloads(outing));
    }

    @Test
    void isSplitByAnotherHookupAndNotByTheSame() {
        Rig rig = Rigs.of("40000", List.of(Rigs.hookup("a", "10000"), Rigs.hookup("b", "11000")));
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).samples(12_000, 5))
                .hookup("a")
                .samples(Traces.atHertz(100).samples(12_000, 5))
                .hookup("b")
                .samples(Traces.atHertz(100).samples(12_000, 5).hold(0, 1));
        assertEquals(
                List.of(
                        new Overload(0, 9, 10, 12_000, "a", true, false, false, false, false),
                        new Overload(10, 14, 5, 12_000, "b", false, false, false, false, false)),
                outing.detect(rig).of(Overload.class));
    }

    @Test
    void saysAtLeastAtTheEndStop() {
        Traces trace = Traces.atHertz(100).of(8_388_607).hold(0, 1);
        assertEquals(true, overloads(Outings.atHertz(100).samples(trace)).get(0).atLeast());
    }
}
