package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.detect.Detection;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

class HoursTest {
    private static final double SECOND = 1 / 3_600.0;
    private static final Calibration ONE_NEWTON = Calibration.of("0", "1");
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    private static Hours hoursOf(Outings outing, Rig rig) {
        Hours hours = new Hours(outing.instrument(), rig, ONE_NEWTON);
        Detection detection = new Detection(outing.instrument(), rig, ONE_NEWTON, hours);
        outing.tensionCalls().forEach(call -> call.on(detection));
        outing.shaftCalls().forEach(call -> call.on(detection));
        detection.end();
        return hours;
    }

    private static Outings fourSecondPull() {
        return Outings.atHertz(100)
                .samples(Traces.atHertz(100)
                        .hold(0, 2)
                        .hold(5_000, 3)
                        .hold(12_000, 1)
                        .hold(0, 5));
    }

    @Test
    void countsPullsByShareAndShaft() {
        Hours hours = hoursOf(fourSecondPull().shaft(0, 11, 600), RIG);
        assertEquals(4 * SECOND, hours.pullHours(), 1e-12);
        assertEquals(4 * SECOND, hours.winchingHours(), 1e-12);
        assertEquals(0, hours.heldHours());
        assertEquals(3 * SECOND, hours.bandHours(0), 1e-12);
        assertEquals(1 * SECOND, hours.bandHours(2), 1e-12);
        assertEquals(1, hours.count("pull"));
        assertEquals(0, hours.count("overload"));
    }

    @Test
    void letsAReadingSpeakForTheTimeToTheNextAndAtMostASecond() {
        Hours hours = new Hours(Outings.atHertz(100).instrument(), RIG, ONE_NEWTON);
        hours.shaftReading(0, 60);
        hours.shaftReading(100_000, 59.9);
        hours.shaftReading(200_000, 540);
        hours.shaftReading(5_000_000, 540);
        // then 0.1 s, nothing, 1 s of 4.8 s, and nothing for the last
        assertEquals(1.1 * SECOND, hours.shaftHours(), 1e-12);
    }

    @Test
    void addsUpOverOutingsInAnyOrder() {
        MeterReading slow = hoursOf(
                        Outings.atHertz(7)
                                .samples(Traces.atHertz(7).hold(5_000, 100))
                                .shaft(0, 50, 600),
                        RIG)
                .reading();
        MeterReading fast = hoursOf(fourSecondPull().shaft(0, 11, 600), RIG).reading();
        assertEquals(slow.plus(fast), fast.plus(slow));
        assertEquals(104 * SECOND, slow.plus(fast).pullHours(), 1e-12);
        assertEquals(2, slow.plus(fast).count("pull"));
        assertEquals(slow, slow.plus(MeterReading.NONE));
    }

    @Test
    void doesNotTakeAnUnknownShaftForOneThatStood() {
        MeterReading known = hoursOf(fourSecondPull().shaft(0, 11, 600), RIG).reading();
        MeterReading unknown = hoursOf(fourSecondPull(), RIG).reading();
        assertTrue(unknown.shaftHours().isEmpty());
        assertTrue(MeterReading.NONE.shaftHours().isEmpty());
        assertFalse(known.plus(known).shaftIsAtLeast());
        MeterReading both = known.plus(unknown);
        assertTrue(both.shaftIsAtLeast());
        assertEquals(known.shaftHours(), both.shaftHours());
        assertEquals(known.heldHours(), both.heldHours());
        assertTrue(both.jointHours().isEmpty());
    }

    @Test
    void weighsTheJointAgainstItsRating() {
        // given a drum whose one layer turns 5 kN into 500 N m, the shaft's rating, at the joint's rated angle
        Driveline line = new Driveline(0.1, 0, 1, 1, 1, 500, 540, OptionalDouble.of(5), OptionalDouble.of(5));
        Rig rig = new Rig(
                RIG.winch(), RIG.ratedPullNewtons(), RIG.hookups(), RIG.detect(), Optional.empty(), Optional.of(line));
        Hours hours = new Hours(Outings.atHertz(100).instrument(), rig, ONE_NEWTON);
        // when one second at 540 rpm and 5 kN, one at twice the torque, one with the clutch out
        hours.shaftInterval(1_000_000, 540, 100, GreatestCount.of(5_000), Known.YES);
        hours.shaftInterval(1_000_000, 540, 100, GreatestCount.of(10_000), Known.YES);
        hours.shaftInterval(1_000_000, 540, 100, GreatestCount.of(10_000), Known.NO);
        // then 1 + 2^(10/3)
        assertEquals((1 + 10.079368399158986) * SECOND, hours.jointHours().orElseThrow(), 1e-12);
        assertFalse(hours.jointHoursAreAtMost());
        hours.shaftInterval(1_000_000, 540, 100, GreatestCount.of(5_000), Known.UNKNOWN);
        assertTrue(hours.jointHoursAreAtMost());
        // and the detectors feed it: 10 readings a second, the first of which speaks for nothing before it
        Hours fed = hoursOf(
                Outings.atHertz(100)
                        .samples(Traces.atHertz(100).hold(5_000, 10))
                        .shaft(0, 10, 540),
                rig);
        assertEquals(9.8, fed.jointHours().orElseThrow() / SECOND, 0.3);
    }

    @Test
    void doesNotKnowTheJointWithoutADriveline() {
        assertEquals(OptionalDouble.empty(), hoursOf(fourSecondPull(), RIG).jointHours());
    }
}
