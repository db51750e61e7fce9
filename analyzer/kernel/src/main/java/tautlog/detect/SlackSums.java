package tautlog.detect;

/** The sum of the counts of a stretch, and of their squares under a curve: what its mean tension is worked out from, exactly. */
final class SlackSums {
    private long sum;
    private final SquareSum squares = new SquareSum();

    /** Takes the samples from place {@code from} to {@code through}. */
    void of(CountRing ring, long from, long through) {
        sum = 0;
        squares.clear();
        for (long place = from; place <= through; place++) {
            int count = ring.at(place);
            sum += count;
            squares.add(count);
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
