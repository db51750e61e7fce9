package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SteepnessTest {
    private static Steepness of(double... newtons) {
        return Steepness.of(newtons.length - 1, newtons);
    }

    /** Its first reading at the foot. */
    private static double[] quarterSine(int samples) {
        return IntStream.rangeClosed(0, samples)
                .mapToDouble(i -> 10_000 * Math.sin(Math.PI / 2 * i / samples))
                .toArray();
    }

    @Test
    void aHalfSineIsAsLongAsItIs() {
        // closed form: it rises by sin(k · 90° / samples) in its first k
        for (int samples : new int[] {5, 8, 20}) {
            assertEquals(samples, of(quarterSine(samples)).samples(), 1e-9);
            assertTrue(of(quarterSine(samples)).isResolved());
        }
        assertFalse(of(quarterSine(3)).isResolved());
    }

    @Test
    void aStepIsTooFastHoweverLateItsGreatestReadingCame() {
        assertFalse(of(0, 9_900, 9_950, 9_900, 9_940, 9_920, 9_960, 10_000).isResolved());
        assertFalse(of(0, 10, 5, 0, 10, 20, 10_000).isResolved());
    }

    @Test
    void aStairIsTooFastWhenAStepIsAGoodPartOfIt() {
        assertFalse(of(0, 5_000, 5_000, 5_000, 5_000, 10_000).isResolved());
        assertTrue(of(0, 2_000, 2_000, 4_000, 4_000, 6_000, 6_000, 8_000, 8_000, 10_000)
                .isResolved());
    }

    @Test
    void aRampOfThreeIsTooFastAndOneOfFourIsNot() {
        assertFalse(of(0, 3_300, 6_600, 9_900, 9_900, 10_000).isResolved());
        assertTrue(of(0, 2_500, 5_000, 7_500, 9_900, 10_000).isResolved());
    }

    @Test
    void whatIsMissingMayHaveRisenAtOnce() {
        // eight sample numbers, five of them missing
        assertFalse(Steepness.of(8, new double[] {0, 1_000, 9_000, 10_000}).isResolved());
    }

    @Test
    void theCrestIsThatOfTheHalfSine() {
        // 20000 / cos(π / 20)
        assertEquals(20_249.3, Steepness.ofLength(5).crest(20_000), 0.1);
        assertEquals(-100, Steepness.ofLength(5).crest(-100), 0);
    }
}
