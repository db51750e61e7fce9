package tautlog.plan;

/**
 * Two numbers between which the true one is taken to lie; the ends belong to it.
 *
 * @param low finite
 * @param high finite, not below {@code low}
 */
public record Interval(double low, double high) {
    /** @throws IllegalArgumentException if an end is not finite, or they stand the wrong way round */
    public Interval {
        if (!Double.isFinite(low) || !Double.isFinite(high) || low > high) {
            throw new IllegalArgumentException("an interval has a low and a high end, was " + low + " to " + high);
        }
    }

    /** {@code value} less and more by a fraction of it; {@code value} is 0 or more. */
    static Interval around(double value, double fraction) {
        return new Interval(value * (1 - fraction), value * (1 + fraction));
    }

    /** The same in another unit; {@code factor} is above 0. */
    Interval times(double factor) {
        return new Interval(low * factor, high * factor);
    }

    /** Whether {@code value} lies in it. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }
}
