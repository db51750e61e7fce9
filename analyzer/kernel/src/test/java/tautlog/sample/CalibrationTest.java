package tautlog.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static final String[] REAL = {"1e-9", "-1e-9", "1e-7", "-1e-7", "1e-6", "-1e-6"};

    private static Calibration curve(String curvature) {
        return new Calibration(new BigDecimal("120.25"), new BigDecimal("0.0153"), new BigDecimal(curvature));
    }

    /** The definition, counts = zero + (T + κT²)/k, in decimals: nothing of the inverse is used. */
    private static BigDecimal counts(Calibration c, BigDecimal newtons) {
        return c.zeroCounts()
                .add(newtons.add(c.curvature().multiply(newtons.pow(2)))
                        .divide(c.newtonsPerCount(), java.math.MathContext.DECIMAL128));
    }

    @Test
    void tensionPutIntoTheDefinitionGivesTheCounts() {
        for (String curvature : REAL) {
            Calibration calibration = curve(curvature);
            for (int counts = -8_000_000; counts <= 8_000_000; counts += 99_991) {
                BigDecimal newtons = calibration.exactNewtons(counts);
                // rounding of a few doubles: 1e-15 of 8 million counts, times ten
                assertEquals(counts, counts(calibration, newtons).doubleValue(), 1e-7, curvature);
            }
        }
    }

    @Test
    void aThresholdIsTheFirstCountWhoseTensionReachesIt() {
        for (String curvature : new String[] {"1e-6", "-1e-6", "2e-5", "-2e-5"}) {
            Calibration calibration = curve(curvature);
            for (int newtons = -5_000; newtons < 60_000; newtons += 517) {
                int first = calibration.leastCountsAtOrAbove(BigDecimal.valueOf(newtons));
                assertTrue(calibration.newtons(first) >= newtons - 1e-9, curvature);
                assertTrue(calibration.newtons(first - 1) < newtons, curvature);
            }
        }
    }

    /** The page: the error is at most 2κ² · mean |k(c − m)|³ / w⁵, w the least of the samples; and 1e-9 N for rounding. */
    @Test
    void aMeanFromSumsIsThePlainMeanOfTheTensionsToThirdOrder() {
        Random random = new Random(4);
        for (String curvature : REAL) {
            Calibration calibration = curve(curvature);
            double kappa = Double.parseDouble(curvature);
            for (int n : new int[] {1, 2, 50, 5_000}) {
                for (double newtons : new double[] {30, 3_000, 15_000}) {
                    double[] c = random.ints(n, 0, (int) (2 * newtons / 0.0153))
                            .asDoubleStream()
                            .toArray();
                    long sum = 0;
                    long squares = 0;
                    double plain = 0;
                    for (double count : c) {
                        sum += (long) count;
                        squares += (long) (count * count);
                        plain += calibration.newtons(count) / n;
                    }
                    double mean = sum / (double) n;
                    double third = 0;
                    double least = 1;
                    for (double count : c) {
                        third += Math.pow(Math.abs((count - mean) * 0.0153), 3) / n;
                        least = Math.min(least, 1 + 4 * kappa * (count - 120.25) * 0.0153);
                    }
                    double bound = 2 * kappa * kappa * third / Math.pow(least, 2.5) + 1e-9;
                    assertEquals(plain, calibration.meanNewtons(sum, BigInteger.valueOf(squares), n), bound, curvature);
                }
            }
        }
    }

    /** Without the squares the mean of 0 and 30 kN at 1e-6 per newton would be a hundred newtons and more off. */
    @Test
    void theSquaresMatter() {
        Calibration calibration = curve("1e-6");
        long low = calibration.leastCountsAtOrAbove(BigDecimal.ZERO);
        long high = calibration.leastCountsAtOrAbove(BigDecimal.valueOf(30_000));
        double plain = (calibration.newtons(low) + calibration.newtons(high)) / 2;

        double mean = calibration.meanNewtons(low + high, BigInteger.valueOf(low * low + high * high), 2);

        assertTrue(Math.abs(calibration.newtons((low + high) / 2.0) - plain) > 100);
        assertEquals(plain, mean, 8);
    }

    @Test
    void aMeanUnderAStraightLineIsTheTensionOfTheMeanCount() {
        Calibration line = Calibration.of("120.25", "0.0153");
        assertEquals(line.newtons(7.0 / 3), line.meanNewtons(7, BigInteger.ZERO, 3));
    }

    /** At 1 N a count and −1e-5 per newton: u = 1/(4 · 1e-5) = 25,000 counts; a zero of half a count moves it. */
    @Test
    void risesToItsTopOrFromItsBottom() {
        Calibration down = new Calibration(BigDecimal.ZERO, BigDecimal.ONE, new BigDecimal("-1e-5"));
        Calibration up = new Calibration(new BigDecimal("0.5"), BigDecimal.ONE, new BigDecimal("1e-5"));

        assertEquals(25_000, down.topCounts());
        assertEquals(50_000, down.newtons(25_000));
        assertEquals(-25_000, up.bottomCounts());
        assertEquals(Long.MAX_VALUE, up.topCounts());
        assertEquals(Long.MAX_VALUE, Calibration.of("0", "1").topCounts());
    }
}
