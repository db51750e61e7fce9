package tautlog.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ZeroShiftTest {
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 1_000, 6);

    private final List<Integer> seen = new ArrayList<>();
    private final ZeroShift shift = new ZeroShift(INSTRUMENT, new Counts());

    private final class Counts extends QuietEvidence {
        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            for (int i = from; i < from + n; i++) {
                seen.add(counts[i]);
            }
        }
    }

    @Test
    void passesCountsOnUnchangedUntilAZeroIsTold() {
        shift.tension(0, 0, 0, new int[] {9, 5, 6, 9}, 1, 2);
        assertEquals(List.of(5, 6), seen);
    }

    @Test
    void takesTheShiftOffFromItsSampleOnEvenInsideAFrame() {
        // when
        shift.zero(12, 100, ZeroSource.SLACK);
        shift.tension(10, 0, 0, new int[] {500, 500, 500, 500}, 0, 4);
        shift.tension(14, 0, 0, new int[] {500}, 0, 1);
        // then
        assertEquals(List.of(500, 500, 400, 400, 400), seen);
    }

    @Test
    void replacesTheShiftBefore() {
        // when
        shift.zero(0, 100, ZeroSource.SLACK);
        shift.tension(0, 0, 0, new int[] {500}, 0, 1);
        shift.zero(1, -20, ZeroSource.BUTTON);
        shift.tension(1, 0, 0, new int[] {500}, 0, 1);
        // then
        assertEquals(List.of(400, 520), seen);
    }

    /** Samples that mean nothing are passed over; a zero that moved among them holds until the one told next moves. */
    @Test
    void takesUpAShiftThatMovedAmongSamplesItWasNotGiven() {
        // given
        shift.zero(5, 100, ZeroSource.SLACK);
        shift.advanceTo(9);
        // when
        shift.zero(12, -20, ZeroSource.BUTTON);
        shift.tension(10, 0, 0, new int[] {500, 500, 500}, 0, 3);
        // then
        assertEquals(List.of(400, 400, 520), seen);
    }

    @Test
    void leavesASampleAtTheEndStopAndPutsNoOtherThere() {
        // when
        shift.zero(0, -50, ZeroSource.SLACK);
        shift.tension(0, 0, 0, new int[] {1_000, 990, -1_001}, 0, 3);
        // then
        assertEquals(List.of(1_000, 999, -1_001), seen);
    }

    @Test
    void keepsTheZeroWhereItWasFoundUnderAnotherCalibration() {
        // given
        Calibration ofTheDay = Calibration.of("10", "1");
        Calibration now = Calibration.of("25.5", "1.01");
        ZeroShift under = ZeroShift.under(now, ofTheDay, INSTRUMENT, new Counts());
        // when: found at 10 + 30 counts
        under.tension(0, 0, 0, new int[] {40}, 0, 1);
        under.zero(1, 30, ZeroSource.SLACK);
        under.tension(1, 0, 0, new int[] {40}, 0, 1);
        // then: 40 − 15 is within half a count of its zero
        assertEquals(List.of(40, 25), seen);
    }
}
