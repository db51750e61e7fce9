package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

class SecondsMakerTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    @Test
    void summarisesASecondOfSamples() {
        Traces trace = Traces.atHertz(100).samples(10, 99).of(5_000).samples(-10, 50);
        List<Second> seconds = Outings.atHertz(100).samples(trace).detect(RIG).seconds();
        assertEquals(
                List.of(
                        new Second(0, 0, 10, 5_000, 5_990, 100, OptionalDouble.empty(), "straight", 0.25, 0),
                        new Second(1, 100, -10, -10, -500, 50, OptionalDouble.empty(), "straight", -0.0005, 0)),
                seconds);
    }

    @Test
    void flagsWhatIsMissingAndSkipsSecondsWithoutASample() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).samples(0, 50))
                .gap(250)
                .samples(Traces.atHertz(100).samples(20_001, 100))
                .samples(Traces.atHertz(100).of(8_388_607))
                .openBridge(20)
                .samples(Traces.atHertz(100).of(0));
        List<Second> seconds = outing.detect(RIG).seconds();
        assertEquals(List.of(0L, 3L, 4L), seconds.stream().map(Second::index).toList());
        assertEquals(
                List.of(
                        Second.GAP,
                        Second.OVER_LIMIT,
                        Second.GAP | Second.END_STOP | Second.OPEN_BRIDGE | Second.OVER_LIMIT),
                seconds.stream().map(Second::flags).toList());
    }

    @Test
    void takesTheMeanOfTheShaftReadingsThatSitInIt() {
        List<Second> seconds = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 3))
                .shaft(0, 3, 600)
                .detect(RIG)
                .seconds();
        assertEquals(600, seconds.get(1).shaftRpm().orElseThrow(), 1e-9);
    }

    /** Pulses 97,324 ticks of a microsecond apart: 616.4974… rpm. */
    @Test
    void roundsTheSpeedToATenth() {
        List<Second> seconds = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(0, 3))
                .shaft(0, 3, 60e6 / 97_324)
                .detect(RIG)
                .seconds();
        assertEquals(616.5, seconds.get(1).shaftRpm().orElseThrow());
    }
}
