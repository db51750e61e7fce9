package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;

/** Against one look at each place, the plain form. */
class CountRingTest {
    private final Random random = new Random(1);
    private final Run run = new Run(new HookupLimits(
            Rigs.withLimit("20000", "8000").hookups().get(0), false, BigDecimal.ONE, Calibration.of("0", "1")));

    @Test
    void findsTheGreatestOfPlacesThatItHolds() {
        CountRing ring = new CountRing(50);
        for (int round = 0; round < 2_000; round++) {
            int n = 1 + random.nextInt(40);
            run.set(ring.size(), random.ints(n).toArray(), 0, n);
            ring.append(run);
            long first = ring.oldest() + random.nextInt((int) (ring.size() - ring.oldest()));
            long last = first + random.nextInt((int) (ring.size() - first));

            int greatest = Integer.MIN_VALUE;
            for (long place = first; place <= last; place++) {
                greatest = Math.max(greatest, ring.at(place));
            }

            assertEquals(greatest, ring.greatest(first, last));
        }
    }

    @Test
    void namesTheOldestPlaceThatItHolds() {
        CountRing ring = new CountRing(50);
        for (int round = 0; round < 100; round++) {
            run.set(ring.size(), new int[] {round}, 0, 1);
            ring.append(run);

            assertTrue(ring.holds(ring.oldest()));
            assertFalse(ring.holds(ring.oldest() - 1));
        }
    }
}
