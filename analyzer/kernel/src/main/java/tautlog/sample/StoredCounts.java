package tautlog.sample;

/**
 * Up to 128 consecutive counts of which least and greatest are known, and which may lie coded until somebody wants each of them.
 * Does not change.
 */
public interface StoredCounts {
    /** The most counts that lie together: the grain in which recordings keep least and greatest. */
    int MOST = 128;

    /** How many; 1 to {@link #MOST}. */
    int size();

    /** The least of them, exactly. */
    int least();

    /** The greatest of them, exactly. */
    int greatest();

    /** Writes all of them to {@code to[at]} and behind. */
    void copyTo(int[] to, int at);

    /**
     * Some of them, apart.
     *
     * @param skip how many to leave out, 0 or more
     * @param n how many to take, 1 or more
     */
    default StoredCounts part(int skip, int n) {
        if (n == size()) {
            return this;
        }
        int[] all = new int[size()];
        copyTo(all, 0);
        return PlainCounts.copyOf(all, skip, n);
    }
}
