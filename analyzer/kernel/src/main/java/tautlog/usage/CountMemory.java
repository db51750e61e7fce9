package tautlog.usage;

import java.util.Arrays;

/**
 * Which counts were met lately: each has one place, and pushes out the one that had it before. Tensions stay near each other for a
 * while, so what was worked out for a count is mostly there when it comes again.
 */
final class CountMemory {
    /** A power of two. */
    static final int PLACES = 1 << 12;

    private static final long NOTHING = Long.MIN_VALUE;

    private final long[] counts = new long[PLACES];

    CountMemory() {
        Arrays.fill(counts, NOTHING);
    }

    /** The place of {@code count}, 0 to {@link #PLACES} − 1. */
    static int placeOf(int count) {
        return count & (PLACES - 1);
    }

    boolean holds(int count) {
        return counts[placeOf(count)] == count;
    }

    void remember(int count) {
        counts[placeOf(count)] = count;
    }
}
