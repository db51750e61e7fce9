package tautlog.detect;

/** The sum of the counts of a stretch, and of their squares under a curve: what its mean tension is worked out from, exactly. */
final class SlackSums {
    private long sum;
    private final SquareSum squares = new SquareSum();

    /** Takes the samples from place {@code from} to {@code through}; their squares where {@code isCurved}. */
    void of(CountRing ring, long from, long through, boolean isCurved) {
        sum = ring.sum(from, through);
        squares.clear();
        for (long place = from; isCurved && place <= through; place++) {
            squares.add(ring.at(place));
        }
    }

    /** Takes {@code n} samples of the same count; their squares are left out. */
    void of(int count, int n) {
        sum = (long) count * n;
        squares.clear();
    }

    boolean isDrift(SlackSums from, Relations relations) {
        return relations.isDrift(sum, squares, from.sum, from.squares);
    }
}
