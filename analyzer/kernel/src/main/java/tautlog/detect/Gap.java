package tautlog.detect;

/**
 * Missing sample numbers between two present samples.
 *
 * @param first the first missing number
 * @param last the last missing number
 * @param isLong longer than the {@code bridge} setting: nothing goes on across it
 */
record Gap(long first, long last, boolean isLong) {
    /** True when a missing number lies in ({@code after}, {@code through}]. */
    boolean touches(long after, long through) {
        return last > after && first <= through;
    }
}
