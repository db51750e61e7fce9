package tautlog.logger.instrument.shaft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SteadyOffsetTest {
    private static final long MILLI = 1_000_000L;

    @Test
    void movesToTheLeastDelayWithoutBendingAnIntervalByMoreThanAThousandth() {
        // given: a counter of 1 kHz; the first frame is 40 ms late, later ones 2 to 42 ms
        SteadyOffset offset = new SteadyOffset(1_000);
        Random random = new Random(2);
        assertFalse(offset.isKnown());
        offset.heard(0, 40 * MILLI);
        long last = offset.nanosAt(0);

        // when, then: two minutes, ten frames a second
        for (int k = 1; k <= 1_200; k++) {
            offset.heard(k * 100, (k * 100 + 2 + random.nextInt(41)) * MILLI);
            long now = offset.nanosAt(k * 100);
            assertTrue(Math.abs(now - last - 100 * MILLI) <= MILLI / 10 + 1, "interval " + (now - last));
            last = now;
        }
        assertEquals(2 * MILLI, last - 120_000 * MILLI, MILLI, "least delay, and the drift allowed for");
    }

    @Test
    void followsACounterThatRunsWrongByFiftyMillionths() {
        // given: it counts too slowly, so that each frame seems later; none is late
        SteadyOffset offset = new SteadyOffset(1_000_000);
        for (long second = 0; second <= 3_600; second++) {
            offset.heard(second * 999_950, second * 1_000 * MILLI);
        }

        // then: after an hour, 180 ms of drift
        assertEquals(3_600_000 * MILLI, offset.nanosAt(3_600L * 999_950), MILLI / 2.0);
    }

    @Test
    void turnsTimesIntoTicksAndBack() {
        SteadyOffset offset = new SteadyOffset(32_768);
        offset.heard(32_768_000_000_000L, 77);

        assertEquals(32_768_000_000_000L + 16_384, offset.tickAt(offset.nanosAt(32_768_000_000_000L + 16_384)));
        assertEquals(32_768_000_000_000L - 3 * 32_768, offset.tickAt(77 - 3_000 * MILLI));
    }
}
