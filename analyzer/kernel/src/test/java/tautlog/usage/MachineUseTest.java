package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.Gson;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import tautlog.detect.Detection;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Band;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

class MachineUseTest {
    private static final Calibration ONE_NEWTON = Calibration.of("0", "1");

    static MachineUse of(Outings outing, Rig rig, SampleClock clock) {
        MachineMeter meter = new MachineMeter(outing.instrument(), rig, ONE_NEWTON);
        Detection detection = new Detection(outing.instrument(), rig, ONE_NEWTON, meter);
        outing.tensionCalls().forEach(call -> call.on(meter.samples()));
        outing.tensionCalls().forEach(call -> call.on(detection));
        outing.shaftCalls().forEach(call -> call.on(detection));
        detection.end();
        return meter.use(clock);
    }

    /** 3 s at 5 kN, 1 s at 12 kN, 0.5 s at 45 kN; then slack. */
    static Outings pull() {
        return Outings.atHertz(100)
                .samples(Traces.atHertz(100)
                        .hold(0, 2)
                        .hold(5_000, 3)
                        .hold(12_000, 1)
                        .hold(45_000, 0.5)
                        .hold(0, 5))
                .shaft(0, 11, 540);
    }

    @Test
    void comesBackFromJsonAsItWas() {
        MachineUse use = of(pull(), Rigs.parsed(Rigs.exampleText()), number -> OptionalLong.of(number * 10_000));
        Gson gson = new Gson();

        MachineUse back = gson.fromJson(gson.toJson(use), MachineUse.class);

        assertEquals(use, back);
        assertEquals(1, use.ofGear("choker").events().size());
    }

    @Test
    void addsUpInAnyOrder() {
        Rig rig = Rigs.parsed(Rigs.exampleText());
        MachineUse one = of(pull(), rig, SampleClock.UNKNOWN);
        MachineUse two = of(
                Outings.atHertz(7).samples(Traces.atHertz(7).hold(20_000, 100)).shaft(0, 50, 400),
                rig,
                number -> OptionalLong.of(number));
        MachineUse three =
                of(Outings.atHertz(50).samples(Traces.atHertz(50).hold(2_000, 10)), rig, SampleClock.UNKNOWN);

        assertEquals(one.plus(two).plus(three), three.plus(one.plus(two)));
        assertEquals(one.plus(two).plus(three), three.plus(two).plus(one));
        assertEquals(one, one.plus(MachineUse.NONE));
        assertEquals(2, one.plus(two).ofGear("choker").events().size());
        assertEquals(1, one.plus(two).ofGear("choker").overloads(Band.PAST_PROOF));
    }
}
