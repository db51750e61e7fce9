package tautlog.sample;

import java.util.Arrays;

/** Counts that lie open. */
public final class PlainCounts implements StoredCounts {
    private final int[] counts;
    private final CountBounds bounds = new CountBounds();

    private PlainCounts(int[] counts) {
        this.counts = counts;
        bounds.measure(counts, 0, counts.length);
    }

    /**
     * Of {@code counts[from]} to {@code counts[from + n - 1]}.
     *
     * @param n 1 to 128
     */
    public static PlainCounts copyOf(int[] counts, int from, int n) {
        return new PlainCounts(Arrays.copyOfRange(counts, from, from + n));
    }

    @Override
    public int size() {
        return counts.length;
    }

    @Override
    public int least() {
        return bounds.least();
    }

    @Override
    public int greatest() {
        return bounds.greatest();
    }

    @Override
    public void copyTo(int[] to, int at) {
        System.arraycopy(counts, 0, to, at, counts.length);
    }
}
