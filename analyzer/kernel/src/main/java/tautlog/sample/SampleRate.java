package tautlog.sample;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The nominal sample rate, exact, and the only place where a time becomes a number of samples.
 *
 * @param millihertz 1 or more
 */
public record SampleRate(long millihertz) {
    private static final BigDecimal THOUSAND = BigDecimal.valueOf(1_000);

    /** @throws IllegalArgumentException if {@code millihertz} is not above 0 */
    public SampleRate {
        if (millihertz <= 0) {
            throw new IllegalArgumentException("millihertz must be above 0, was " + millihertz);
        }
    }

    public double hertz() {
        return millihertz / 1_000.0;
    }

    /** N(x) of {@code FINDINGS.md}: max(1, round(x · f)), halves up, worked out in decimal. */
    public int samplesIn(BigDecimal seconds) {
        BigDecimal samples = seconds.multiply(BigDecimal.valueOf(millihertz)).divide(THOUSAND);
        return Math.max(1, samples.setScale(0, RoundingMode.HALF_UP).intValueExact());
    }

    /** The time that {@code samples} intervals take at the nominal rate, in seconds. */
    public double seconds(long samples) {
        return samples * 1_000.0 / millihertz;
    }
}
