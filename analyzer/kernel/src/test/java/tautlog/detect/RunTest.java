package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;

/** Against the JDK's streams, the plain form. */
class RunTest {
    private final Random random = new Random(1);
    private final Run run = new Run(new HookupLimits(
            Rigs.withLimit("20000", "8000").hookups().get(0), false, BigDecimal.ONE, Calibration.of("0", "1")));

    @Test
    void knowsLeastGreatestAndSum() {
        for (int round = 0; round < 2_000; round++) {
            int[] counts = someCounts();

            run.set(0, counts, 3, counts.length - 5);
            run.measure();

            int[] plain = Arrays.copyOfRange(counts, 3, counts.length - 2);
            assertEquals(Arrays.stream(plain).min().orElseThrow(), run.least);
            assertEquals(Arrays.stream(plain).max().orElseThrow(), run.greatest);
            assertEquals(Arrays.stream(plain).asLongStream().sum(), run.sum);
        }
    }

    @Test
    void worksOutTheSumWhenLeastAndGreatestAreGiven() {
        for (int round = 0; round < 2_000; round++) {
            int[] counts = someCounts();

            run.set(0, counts, 3, counts.length - 5);
            run.measure();
            long sum = run.sum;
            run.measured(run.least, run.greatest);

            assertEquals(sum, run.sum);
        }
    }

    @Test
    void countsWhatIsAbove() {
        for (int round = 0; round < 2_000; round++) {
            int[] counts = someCounts();
            int than = counts[random.nextInt(counts.length)];

            run.set(0, counts, 3, counts.length - 5);

            int[] plain = Arrays.copyOfRange(counts, 3, counts.length - 2);
            assertEquals(Arrays.stream(plain).filter(count -> count > than).count(), run.above(than));
        }
    }

    /** 6 to 133 counts, of which a run takes all but five; small or of the whole range. */
    private int[] someCounts() {
        int shift = random.nextInt(32);
        return random.ints(6 + random.nextInt(128)).map(count -> count >> shift).toArray();
    }
}
