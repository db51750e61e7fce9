package tautlog.sample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
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

    @Test
    void takesAShiftOffStoredCountsAsOffOpenOnes() {
        Random random = new Random(3);
        int[] levels = {-1_001, -1_000, -999, -500, 0, 700, 998, 999, 1_000};
        for (int round = 0; round < 2_000; round++) {
            // given
            int by = random.nextInt(5) == 0 ? 0 : random.nextInt(400) - 200;
            shift.zero(round * 200L, by, ZeroSource.SLACK);
            shift.advanceTo(round * 200L);
            int level = levels[random.nextInt(levels.length)];
            int[] counts = random.ints(1 + random.nextInt(128), level - 3, level + 4)
                    .map(count -> Math.max(-1_001, Math.min(1_000, count)))
                    .toArray();
            StoredCounts stored = PlainCounts.copyOf(counts, 0, counts.length);

            // when
            StoredCounts left = shift.shifted(stored);

            // then
            int[] open = new int[counts.length + 2];
            left.copyTo(open, 1);
            int[] expected = IntStream.of(counts)
                    .map(count -> ZeroShift.shifted(INSTRUMENT, count, by))
                    .toArray();
            assertArrayEquals(expected, Arrays.copyOfRange(open, 1, 1 + counts.length));
            assertEquals(expected.length, left.size());
            assertEquals(IntStream.of(expected).min().getAsInt(), left.least());
            assertEquals(IntStream.of(expected).max().getAsInt(), left.greatest());
        }
    }
}
