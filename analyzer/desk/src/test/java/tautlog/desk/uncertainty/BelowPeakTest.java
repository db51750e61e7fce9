package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class BelowPeakTest {
    @Test
    void aSingleReadingReachesAsFarDownAsUp() {
        // 1.96: 97.5 % point of the normal distribution; 5 is the root of 3² + 4²
        assertEquals(9.8, new BelowPeak(new NoiseAtTop(1), 3, 4, 0).width(9.8), 0.05);
    }

    /** Both ends together hold 95 %, as draws find; fewer equally high readings than said are held more often. */
    @Test
    void holdsNinetyFiveOfAHundredDraws() {
        double above = 1.96 * Math.hypot(10, 8) + 3;
        double below = new BelowPeak(new NoiseAtTop(50), 10, 8, 12).width(above);
        assertEquals(0.95, held(50, 10, 8, 12, below, above), 0.004);
        for (int fewer : new int[] {1, 2, 5, 20}) {
            double share = held(fewer, 10, 8, 12, below, above);
            assertTrue(share > 0.948, fewer + " held " + share);
        }
    }

    private static double held(int m, double noise, double normal, double rectangle, double below, double above) {
        Random random = new Random(m);
        int held = 0;
        int draws = 100_000;
        for (int draw = 0; draw < draws; draw++) {
            double greatest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < m; i++) {
                greatest = Math.max(greatest, random.nextGaussian());
            }
            double error =
                    noise * greatest + normal * random.nextGaussian() + rectangle * (2 * random.nextDouble() - 1);
            held += -above <= error && error <= below ? 1 : 0;
        }
        return held / (double) draws;
    }
}
