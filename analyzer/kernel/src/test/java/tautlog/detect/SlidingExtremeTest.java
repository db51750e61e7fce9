package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against a look at every place of the window, the plain form. */
class SlidingExtremeTest {
    private static final int WINDOW = 20;

    private final Random random = new Random(1);
    private final CountRing ring = new CountRing(500);
    private final Piece piece = new Piece();
    private final SlidingExtreme leasts = SlidingExtreme.least(ring, WINDOW);
    private final SlidingExtreme greatests = SlidingExtreme.greatest(ring, WINDOW);

    @Test
    void findsTheLatestPlaceOfTheExtremeInWindowsThatMoveOnJumpAndGoBack() {
        long high = 0;
        for (int round = 0; round < 20_000; round++) {
            // given few different counts, so that equals are many, or a rise, or a fall
            int n = 1 + random.nextInt(8);
            int slope = random.nextInt(3) - 1;
            int start = random.nextInt(5);
            int[] counts = new int[n];
            for (int i = 0; i < n; i++) {
                counts[i] = slope == 0 ? random.nextInt(5) : start + slope * i;
            }
            piece.set(ring.size(), counts, 0, n);
            ring.append(piece);
            long step = random.nextInt(20) == 0 ? -random.nextInt(10) : random.nextInt(n + 1);
            high = Math.max(Math.max(ring.oldest(), high + step), ring.size() - 100);
            high = Math.min(high, ring.size() - 1);
            long low = Math.max(ring.oldest(), high - random.nextInt(WINDOW));

            // when
            long least = leasts.place(low, high);
            long greatest = greatests.place(low, high);

            // then
            assertEquals(plain(low, high, -1), least);
            assertEquals(plain(low, high, 1), greatest);
        }
    }

    private long plain(long low, long high, int sign) {
        long best = low;
        for (long place = low; place <= high; place++) {
            if ((long) sign * ring.at(place) >= (long) sign * ring.at(best)) {
                best = place;
            }
        }
        return best;
    }
}
