package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tautlog.sample.PlainCounts;
import tautlog.sample.StoredCounts;

/** Against a list of all counts, the plain form; some came with frames, some are decoded when somebody asks. */
class CountRingTest {
    private static final int ALL = 200_000;

    private final Random random = new Random(1);
    private final Piece piece = new Piece();
    private final int[] all = new int[ALL];
    private int came;
    private int decoded;

    /** Counts how often it is decoded. */
    private final class Coded implements StoredCounts {
        private final PlainCounts counts;

        Coded(PlainCounts counts) {
            this.counts = counts;
        }

        @Override
        public int size() {
            return counts.size();
        }

        @Override
        public int least() {
            return counts.least();
        }

        @Override
        public int greatest() {
            return counts.greatest();
        }

        @Override
        public void copyTo(int[] to, int at) {
            decoded++;
            counts.copyTo(to, at);
        }
    }

    private void append(CountRing ring) {
        boolean asFrame = random.nextInt(3) == 0;
        int n = 1 + random.nextInt(128);
        n = asFrame ? n : ring.cut(n);
        for (int i = 0; i < n; i++) {
            all[came + i] = random.nextInt();
        }
        if (asFrame) {
            piece.set(came, all, came, n);
            ring.append(piece);
        } else {
            ring.append(new Coded(PlainCounts.copyOf(all, came, n)));
        }
        came += n;
    }

    @Test
    void findsEveryCountThatItHoldsAndTheGreatestOfThem() {
        CountRing ring = new CountRing(500);
        for (int round = 0; round < 2_000; round++) {
            append(ring);
            assertTrue(ring.size() - ring.oldest() >= Math.min(500, came), "it holds what was asked for");
            if (random.nextInt(3) == 0) {
                continue;
            }
            int first = (int) ring.oldest() + random.nextInt((int) (ring.size() - ring.oldest()));
            int last = first + random.nextInt((int) Math.min(300, ring.size() - first));
            int greatest =
                    IntStream.rangeClosed(first, last).map(i -> all[i]).max().orElseThrow();

            assertTrue(ring.greatestBound(first, last) >= greatest);
            assertEquals(all[last], ring.at(last));
            assertEquals(greatest, ring.greatest(first, last));
            assertEquals(all[first], ring.at(first));
        }
    }

    @Test
    void knowsTheGreatestOfWholePiecesWithoutDecodingThem() {
        CountRing ring = new CountRing(5_000);
        for (int round = 0; round < 200; round++) {
            int from = came;
            append(ring);
            append(ring);
            int greatest = IntStream.range(from, came).map(i -> all[i]).max().orElseThrow();

            assertEquals(greatest, ring.greatestBound(from, came - 1L));
        }
        assertEquals(0, decoded);
    }

    @Test
    void decodesEachPieceOnce() {
        CountRing ring = new CountRing(5_000);
        IntStream.range(0, 20).forEach(i -> ring.append(new Coded(PlainCounts.copyOf(new int[64], 0, 64))));

        for (long place = 1_279; place >= 640; place--) {
            ring.at(place);
        }
        ring.greatest(0, 1_279);

        assertEquals(20, decoded);
    }

    @Test
    void namesTheOldestPlaceThatItHolds() {
        CountRing ring = new CountRing(50);
        for (int round = 0; round < 1_000; round++) {
            piece.set(ring.size(), new int[] {round}, 0, 1);
            ring.append(piece);

            assertTrue(ring.holds(ring.oldest()));
            assertFalse(ring.holds(ring.oldest() - 1));
            assertEquals(ring.oldest(), ring.at(ring.oldest()));
        }
    }
}
