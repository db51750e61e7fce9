package tautlog.usage;

/**
 * The greatest of some figures.
 *
 * @param seen false when there was none; {@code value} then means nothing
 * @param atLeast the reading behind it was only a lower bound
 */
public record Greatest(boolean seen, double value, boolean atLeast) {
    public static final Greatest NONE = new Greatest(false, 0, false);

    /** The greater of both; of equals, a lower bound if one is. */
    public Greatest or(Greatest other) {
        if (!seen || !other.seen) {
            return seen ? this : other;
        }
        if (value == other.value) {
            return new Greatest(true, value, atLeast || other.atLeast);
        }
        return value > other.value ? this : other;
    }

    Greatest or(double figure, boolean isAtLeast) {
        return or(new Greatest(true, figure, isAtLeast));
    }
}
