package tautlog.sample;

/** Counts from which a moved zero is taken off when somebody wants each of them. None of them is at an end stop. */
final class ShiftedCounts implements StoredCounts {
    private final StoredCounts counts;
    private final int least;
    private final int greatest;
    private final int shift;
    private final int mostLeft;

    /** @param shift in counts, the same for all of them */
    ShiftedCounts(Instrument instrument, StoredCounts counts, int shift) {
        this.counts = counts;
        this.shift = shift;
        mostLeft = instrument.fullScale();
        // what is left rises with the count
        least = ZeroShift.shifted(instrument, counts.least(), shift);
        greatest = ZeroShift.shifted(instrument, counts.greatest(), shift);
    }

    @Override
    public int size() {
        return counts.size();
    }

    @Override
    public int least() {
        return least;
    }

    @Override
    public int greatest() {
        return greatest;
    }

    @Override
    public void copyTo(int[] to, int at) {
        counts.copyTo(to, at);
        int end = at + counts.size();
        for (int i = at; i < end; i++) {
            to[i] = Math.max(-mostLeft, Math.min(mostLeft - 1, to[i] - shift));
        }
    }
}
