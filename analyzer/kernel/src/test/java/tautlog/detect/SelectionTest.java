package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against sorting, the plain form. */
class SelectionTest {
    private final Random random = new Random(1);

    @Test
    void findsWhatSortingWouldPutThere() {
        for (int round = 0; round < 5_000; round++) {
            int n = 1 + random.nextInt(60);
            int[] counts = someCounts(n);
            int[] sorted = counts.clone();
            Arrays.sort(sorted, 0, n);
            int place = random.nextInt(n);

            int found = Selection.select(counts, n, place);

            assertEquals(sorted[place], found);
        }
    }

    @Test
    void partsTheLesserFromTheGreater() {
        for (int round = 0; round < 5_000; round++) {
            int n = 1 + random.nextInt(60);
            int[] counts = someCounts(n);
            int[] before = counts.clone();
            int place = random.nextInt(n);

            int found = Selection.select(counts, n, place);

            for (int i = 0; i < n; i++) {
                assertTrue(i <= place ? counts[i] <= found : counts[i] >= found);
            }
            Arrays.sort(counts);
            Arrays.sort(before);
            assertEquals(Arrays.toString(before), Arrays.toString(counts));
        }
    }

    @Test
    void handlesTheEndsOfTheRange() {
        int[] counts = {Integer.MAX_VALUE, Integer.MIN_VALUE, 0, Integer.MAX_VALUE, Integer.MIN_VALUE};

        assertEquals(0, Selection.select(counts, 5, 2));
    }

    /** From few different ones to many, some in order; nothing behind the first {@code n}. */
    private int[] someCounts(int n) {
        int spread = 1 + random.nextInt(random.nextBoolean() ? 4 : 1_000_000);
        int[] counts = random.ints(n, -spread, spread).toArray();
        switch (random.nextInt(3)) {
            case 0 -> Arrays.sort(counts);
            case 1 -> Arrays.fill(counts, 0, n / 2, counts[0]);
            default -> {
                // as they came
            }
        }
        return counts;
    }
}
