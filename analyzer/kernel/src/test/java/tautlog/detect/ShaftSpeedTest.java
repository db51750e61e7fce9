package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tautlog.fixtures.Outings;

/** Two pulses a revolution, ticks of a microsecond. Source of the formula: {@code firmware-notes/wire.md}. */
class ShaftSpeedTest {
    private final ShaftSpeed shaft = new ShaftSpeed(Outings.instrument(100, 8_388_607, 2));

    @Test
    void measuresOneWholeRevolutionHoweverUnevenItsTargets() {
        // given pulses 30 ms and 70 ms apart: 100 ms a revolution
        double rpm = shaft.frame(200_000, 3, new long[] {100_000, 130_000, 200_000}, 3);
        assertEquals(600, rpm);
    }

    @Test
    void isNeverFasterThanTheTimeSinceTheLastPulseAllows() {
        shaft.frame(200_000, 3, new long[] {100_000, 150_000, 200_000}, 3);
        // then half a revolution in 100 ms at most: 300 rpm
        assertEquals(300, shaft.frame(300_000, 3, new long[0], 0));
    }

    @Test
    void isZeroMoreThanASecondAfterTheLastPulse() {
        shaft.frame(200_000, 3, new long[] {100_000, 150_000, 200_000}, 3);
        assertTrue(shaft.frame(1_200_000, 3, new long[0], 0) > 0);
        assertEquals(0, shaft.frame(1_300_000, 3, new long[0], 0));
    }

    @Test
    void needsAWholeRevolutionAfterAGapInThePulseTrain() {
        shaft.frame(200_000, 3, new long[] {100_000, 150_000, 200_000}, 3);
        assertTrue(Double.isNaN(shaft.frame(300_000, 6, new long[] {250_000, 300_000}, 2)));
        assertEquals(600, shaft.frame(400_000, 8, new long[] {350_000, 400_000}, 2));
    }

    @Test
    void isZeroASecondAfterTheFirstFrameWhenNoPulseComes() {
        assertTrue(Double.isNaN(shaft.frame(100_000, 9, new long[0], 0)));
        assertTrue(Double.isNaN(shaft.frame(1_100_000, 9, new long[0], 0)));
        assertEquals(0, shaft.frame(1_100_001, 9, new long[0], 0));
    }

    @Test
    void givesNoReadingLessThanFiftyMillisecondsAfterTheLast() {
        shaft.frame(200_000, 3, new long[] {100_000, 150_000, 200_000}, 3);
        assertTrue(Double.isNaN(shaft.frame(249_999, 3, new long[0], 0)));
        assertEquals(600, shaft.frame(250_000, 4, new long[] {250_000}, 1));
    }
}
