package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Drop;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** From 4 kN (0.1 of 40 kN) down to a fifth within 15 samples. 100 Hz, 1 N a count, a tick is a microsecond. */
class DropDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static List<Drop> drops(Outings outing) {
        return outing.detect(RIG).of(Drop.class);
    }

    private static Outings dropAtTwoSeconds() {
        return Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(5_000, 2).of(1_000).hold(10, 3));
    }

    @Test
    void goesFromTheLatestGreatestToTheFirstSampleLowEnough() {
        assertEquals(
                List.of(new Drop(199, 200, 5_000, 10, Known.YES, ShaftAfterDrop.UNKNOWN, Known.UNKNOWN, Known.UNKNOWN)),
                drops(dropAtTwoSeconds()));
        Traces less = Traces.atHertz(100).hold(5_000, 2).samples(1_001, 20).hold(10, 3);
        assertEquals(List.of(), drops(Outings.atHertz(100).samples(less)), "from 1001 N it is below 4 kN");
    }

    @Test
    void mustHappenWithinFifteenSamples() {
        Traces fast = Traces.atHertz(100).hold(5_000, 1).samples(3_000, 14).hold(0, 3);
        Traces slow = Traces.atHertz(100).hold(5_000, 1).samples(3_000, 15).hold(0, 3);
        assertEquals(1, drops(Outings.atHertz(100).samples(fast)).size());
        assertEquals(0, drops(Outings.atHertz(100).samples(slow)).size());
    }

    @Test
    void saysWhetherTheLineStaysSlack() {
        Traces again = Traces.atHertz(100).hold(5_000, 1).hold(0, 1.99).of(750).hold(0, 1);
        assertEquals(Known.YES, drops(dropAtTwoSeconds()).get(0).staysSlack());
        assertEquals(Known.NO, drops(Outings.atHertz(100).samples(again)).get(0).staysSlack());
        Traces ends = Traces.atHertz(100).hold(5_000, 1).hold(0, 1.99);
        assertEquals(
                Known.UNKNOWN, drops(Outings.atHertz(100).samples(ends)).get(0).staysSlack());
        Outings gap = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(5_000, 1).hold(0, 1))
                .gap(1)
                .samples(Traces.atHertz(100).hold(0, 2));
        assertEquals(Known.UNKNOWN, drops(gap).get(0).staysSlack());
    }

    @Test
    void saysWhatTheShaftDid() {
        assertEquals(
                ShaftAfterDrop.STILL,
                drops(dropAtTwoSeconds().shaft(0, 5, 0)).get(0).shaft());
        assertEquals(
                ShaftAfterDrop.KEPT_TURNING,
                drops(dropAtTwoSeconds().shaft(0, 5, 600)).get(0).shaft());
        assertEquals(
                ShaftAfterDrop.RAN_UP,
                drops(dropAtTwoSeconds().shaft(0, 2, 600).shaft(2, 3, 1_200))
                        .get(0)
                        .shaft());
        assertEquals(
                ShaftAfterDrop.STOPPED,
                drops(dropAtTwoSeconds().shaft(0, 1.6, 600).shaft(1.6, 3, 0))
                        .get(0)
                        .shaft());
        assertEquals(
                ShaftAfterDrop.UNKNOWN,
                drops(dropAtTwoSeconds().shaft(0, 2, 600)).get(0).shaft());
    }

    @Test
    void saysWhatClutchAndBrakeWereIfTheInstrumentTells() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(5_000, 1))
                .input(0b010, 0b010)
                .samples(Traces.atHertz(100).hold(5_000, 1))
                .input(0b110, 0b100)
                .samples(Traces.atHertz(100).hold(0, 3));
        assertEquals(Known.YES, drops(outing).get(0).clutch());
        assertEquals(Known.UNKNOWN, drops(outing).get(0).brake());
    }

    @Test
    void isNotSeenAcrossAGap() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(5_000, 1))
                .gap(1)
                .samples(Traces.atHertz(100).hold(0, 3));
        assertEquals(List.of(), drops(outing));
    }
}
