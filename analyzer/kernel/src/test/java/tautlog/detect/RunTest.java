package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;
import tautlog.sample.Passage;
import tautlog.sample.PlainCounts;
import tautlog.sample.StoredCounts;

/** Against the JDK's streams, the plain form. */
class RunTest {
    private final Random random = new Random(1);
    private final HookupLimits limits = new HookupLimits(
            Rigs.withLimit("20000", "8000").hookups().get(0), false, BigDecimal.ONE, Calibration.of("0", "1"));
    private final CountRing ring = new CountRing(1_000);
    private final Piece piece = new Piece();

    private Run inPieces(int[] counts) {
        Run run = new Run(ring, limits);
        run.begin(0, limits);
        for (int from = 0; from < counts.length; from += piece.n) {
            piece.set(from, counts, from, 1 + random.nextInt(counts.length - from));
            ring.append(piece);
            run.add(piece);
        }
        return run;
    }

    private Run stored(int[] counts) {
        Run run = new Run(ring, limits);
        run.begin(0, limits);
        PlainCounts plain = PlainCounts.copyOf(counts, 0, counts.length);
        ring.append(plain);
        run.add(plain);
        return run;
    }

    private void assertTells(int[] counts, Run run) {
        int than = counts[random.nextInt(counts.length)];
        int k = random.nextInt(counts.length);
        long sum = Arrays.stream(counts).asLongStream().sum();
        switch (random.nextInt(4)) { // whatever is asked first decodes
            case 0 -> assertEquals(sum, run.sum());
            case 1 ->
                assertEquals(Arrays.stream(counts).filter(count -> count > than).count(), run.above(than));
            case 2 -> assertEquals(counts[run.indexOf(counts[k])], counts[k]);
            default -> assertEquals(counts[k], run.count(k));
        }
        assertEquals(counts.length, run.n);
        assertEquals(Arrays.stream(counts).min().orElseThrow(), run.least);
        assertEquals(Arrays.stream(counts).max().orElseThrow(), run.greatest);
        assertEquals(sum, run.sum());
        assertEquals(sum, run.sum(), "asked again");
        assertEquals(Arrays.stream(counts).filter(count -> count > than).count(), run.above(than));
        int[] copy = new int[counts.length];
        run.copyTo(k, counts.length, copy, k);
        assertArrayEquals(Arrays.copyOfRange(counts, k, counts.length), Arrays.copyOfRange(copy, k, counts.length));
    }

    /** A passage of a line that is loaded but counts as slack, as a rig may say. */
    @Test
    void sumsUpALongRunOfGreatCounts() {
        CountRing large = new CountRing(1 << 13);
        Run run = new Run(large, limits);
        run.begin(0, limits);
        int[] counts = new int[StoredCounts.MOST];
        Arrays.fill(counts, (1 << 24) - 1);
        for (int i = 0; i < Passage.MOST; i += counts.length) {
            PlainCounts plain = PlainCounts.copyOf(counts, 0, counts.length);
            large.append(plain);
            run.add(plain);
        }

        assertEquals((long) Passage.MOST * ((1 << 24) - 1), run.sum());
    }

    @Test
    void tellsWhatItHoldsHoweverItCame() {
        for (int round = 0; round < 2_000; round++) {
            int[] counts = someCounts();
            if (ring.cut(counts.length) < counts.length) {
                inPieces(Arrays.copyOf(counts, ring.cut(counts.length)));
            }

            assertTells(counts, random.nextBoolean() ? stored(counts) : inPieces(counts));
        }
    }

    /** 1 to 128 counts, small or of the whole range. */
    private int[] someCounts() {
        int shift = random.nextInt(32);
        return random.ints(1 + random.nextInt(128)).map(count -> count >> shift).toArray();
    }
}
