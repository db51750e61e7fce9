package tautlog.logger.beacon;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import tautlog.logger.wire.BeaconState;

/** Holds and precedence: firmware-notes/wire.md, BEACON. */
class BeaconLampTest {
    private final BeaconLamp lamp = new BeaconLamp();

    @Test
    void showsFaultUntilSomethingIsKnown() {
        assertEquals(BeaconState.FAULT, lamp.shown(ms(0)));
        assertEquals(BeaconState.FAULT, lamp.shown(ms(60_000)));
    }

    @Test
    void holdsOverForThreeSecondsAfterTheLastSampleAboveTheLimit() {
        // given: clear, then above the limit from 10.0 s to 10.1 s
        lamp.sensor(BeaconState.CLEAR, ms(0));
        lamp.sensor(BeaconState.OVER, ms(10_000));
        lamp.sensor(BeaconState.CLEAR, ms(10_100));

        // then
        assertEquals(BeaconState.OVER, lamp.shown(ms(10_100)));
        assertEquals(BeaconState.OVER, lamp.shown(ms(13_099)));
        assertEquals(BeaconState.CLEAR, lamp.shown(ms(13_100)));
    }

    @Test
    void holdsCautionAndFaultForHalfASecond() {
        lamp.sensor(BeaconState.CLEAR, ms(0));
        assertEquals(BeaconState.FAULT, lamp.shown(ms(499)));
        assertEquals(BeaconState.CLEAR, lamp.shown(ms(500)));

        lamp.sensor(BeaconState.CAUTION, ms(1_000));
        lamp.sensor(BeaconState.CLEAR, ms(1_001));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(1_500)));
        assertEquals(BeaconState.CLEAR, lamp.shown(ms(1_501)));
    }

    @Test
    void putsOverBeforeFaultBeforeCautionBeforeClear() {
        lamp.sensor(BeaconState.CAUTION, ms(1_000));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(1_600)));
        lamp.fault(BeaconLamp.Trouble.REFUSED, ms(2_000));
        assertEquals(BeaconState.FAULT, lamp.shown(ms(2_000)));
        lamp.sensor(BeaconState.OVER, ms(3_000));
        assertEquals(BeaconState.OVER, lamp.shown(ms(3_000)));
        lamp.sensor(BeaconState.CAUTION, ms(3_001));
        assertEquals(BeaconState.OVER, lamp.shown(ms(6_000)));
        assertEquals(BeaconState.FAULT, lamp.shown(ms(6_001)));
        lamp.mended(BeaconLamp.Trouble.REFUSED, ms(7_000));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(7_500)));
    }

    @Test
    void neverHoldsClearAgainstSomethingWorse() {
        lamp.sensor(BeaconState.CLEAR, ms(10_000));
        lamp.sensor(BeaconState.CAUTION, ms(20_000));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(20_000)));
    }

    @Test
    void showsCautionWhileADriveIsNotFinishedAndHidesNothingWithIt() {
        lamp.sensor(BeaconState.CLEAR, ms(0));
        lamp.driveAtWork(ms(1_000));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(1_000)));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(60_000)));

        lamp.sensor(BeaconState.OVER, ms(61_000));
        assertEquals(BeaconState.OVER, lamp.shown(ms(61_000)));
        lamp.sensor(BeaconState.FAULT, ms(62_000));
        assertEquals(BeaconState.FAULT, lamp.shown(ms(70_000)));
        lamp.sensor(BeaconState.CLEAR, ms(71_000));

        lamp.driveLeft(ms(80_000));
        assertEquals(BeaconState.CAUTION, lamp.shown(ms(80_499)));
        assertEquals(BeaconState.CLEAR, lamp.shown(ms(80_500)));
    }

    private static long ms(long millis) {
        return TimeUnit.MILLISECONDS.toNanos(millis);
    }
}
