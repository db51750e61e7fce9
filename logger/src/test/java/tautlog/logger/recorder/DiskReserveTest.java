package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.wire.BeaconState;

class DiskReserveTest {
    private final BeaconLamp lamp = new BeaconLamp();
    private Optional<Long> free = Optional.of(DiskReserve.BYTES);
    private final DiskReserve reserve = new DiskReserve(() -> free, lamp);

    @BeforeEach
    void aSensorInOrder() {
        lamp.sensor(BeaconState.CLEAR, 0);
    }

    @Test
    void saysNothingWhileTheReserveIsLeft() {
        reserve.look(seconds(10));

        assertFalse(reserve.isLow());
        assertEquals(BeaconState.CLEAR, lamp.shown(seconds(10)));
    }

    @Test
    void showsFaultAsSoonAsLessThanTheReserveIsLeftAndUntilThereIsMore() {
        free = Optional.of(DiskReserve.BYTES - 1);
        reserve.look(seconds(10));
        assertTrue(reserve.isLow());
        assertEquals(BeaconState.FAULT, lamp.shown(seconds(100)));

        free = Optional.of(DiskReserve.BYTES);
        reserve.look(seconds(200));
        assertFalse(reserve.isLow());
        assertEquals(BeaconState.CLEAR, lamp.shown(seconds(201)));
    }

    @Test
    void staysAsItWasWhileTheSystemDoesNotSay() {
        free = Optional.of(0L);
        reserve.look(seconds(10));
        free = Optional.empty();
        reserve.look(seconds(20));

        assertTrue(reserve.isLow());
        assertEquals(BeaconState.FAULT, lamp.shown(seconds(20)));
    }

    @Test
    void leavesFaultOnWhileTheDiskItselfRefuses() {
        lamp.fault(BeaconLamp.Trouble.REFUSED, seconds(5));
        reserve.look(seconds(10));

        assertEquals(BeaconState.FAULT, lamp.shown(seconds(20)), "enough room does not mend a disk");
    }

    @Test
    void neverHidesThatTheLineIsAboveTheLimit() {
        free = Optional.of(0L);
        reserve.look(seconds(10));
        lamp.sensor(BeaconState.OVER, seconds(11));

        assertEquals(BeaconState.OVER, lamp.shown(seconds(11)));
    }

    private static long seconds(long seconds) {
        return TimeUnit.SECONDS.toNanos(seconds);
    }
}
