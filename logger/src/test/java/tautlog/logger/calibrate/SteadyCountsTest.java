package tautlog.logger.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** A window of 1000 samples, blocks of 100: 10 s at 100 Hz. */
class SteadyCountsTest {
    private final SteadyCounts counts = new SteadyCounts(1_000);
    private final Random random = new Random(11);
    private long number;

    /** Feeds up to so many samples; the steady window, if one comes. */
    private Optional<SteadyMean> feed(int samples, IntToDoubleFunction of) {
        for (int i = 0; i < samples; i++) {
            Optional<SteadyMean> mean = counts.add(number++, (int) Math.round(of.applyAsDouble(i)));
            if (mean.isPresent()) {
                return mean;
            }
        }
        return Optional.empty();
    }

    private double noise(double sd) {
        return random.nextGaussian() * sd;
    }

    @Test
    void takesTheMeanOfAWindowWithNothingButNoise() {
        SteadyMean mean = feed(1_000, i -> 20_000 + noise(30)).orElseThrow();

        assertEquals(1_000, mean.samples());
        assertEquals(20_000, mean.mean(), 4 * 30 / Math.sqrt(1_000), "four standard errors");
        assertEquals(30, mean.sd(), 3);
    }

    @Test
    void passesNearlyEveryWindowOfWhiteNoise() {
        int passed = 0;
        for (int i = 0; i < 500; i++) {
            passed += feed(1_000, k -> noise(50)).isPresent() ? 1 : 0;
            counts.clear();
        }
        assertTrue(passed >= 495, passed + " of 500");
    }

    @Test
    void waitsWhileALoadCreeps() {
        assertEquals(Optional.empty(), feed(5_000, i -> 0.1 * i + noise(30)));
        assertTrue(counts.hindrance().contains("still move"), counts.hindrance());
        assertTrue(feed(2_000, i -> 500 + noise(30)).isPresent(), "until it stands");
    }

    @Test
    void waitsWhileALoadSwings() {
        assertEquals(Optional.empty(), feed(5_000, i -> 20_000 + 40 * Math.sin(2 * Math.PI * i / 300) + noise(5)));
        assertTrue(feed(2_000, i -> 20_000 + noise(5)).isPresent());
    }

    @Test
    void allowsASwayOfTwoTenThousandthsOfTheLoad() {
        feed(1_000, i -> 0).orElseThrow();
        assertTrue(feed(1_000, i -> 100_000 + 8 * Math.sin(2 * Math.PI * i / 300))
                .isPresent());
        assertEquals(Optional.empty(), feed(3_000, i -> 100_000 + 14 * Math.sin(2 * Math.PI * i / 300)));
    }

    @Test
    void wantsAWindowWithoutAGap() {
        feed(999, i -> 5);
        number++;
        assertEquals(Optional.empty(), feed(999, i -> 5));
        assertTrue(feed(1, i -> 5).isPresent());
    }
}
