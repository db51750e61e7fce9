package tautlog.usage;

/**
 * Between what bounds a greatest figure lies.
 *
 * @param seen false when there was none; the rest then means nothing
 * @param low 0 when nothing better is known
 * @param high the figure is at most that, unless {@code atLeast}
 * @param atLeast a reading behind it was only a lower bound: more than {@code high} is possible
 */
public record Extent(boolean seen, double low, double high, boolean atLeast) {
    public static final Extent NONE = new Extent(false, 0, 0, false);

    /** Of the greater of two figures. */
    public Extent or(Extent other) {
        if (!seen || !other.seen) {
            return seen ? this : other;
        }
        return new Extent(true, Math.max(low, other.low), Math.max(high, other.high), atLeast || other.atLeast);
    }
}
