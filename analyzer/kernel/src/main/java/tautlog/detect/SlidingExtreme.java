package tautlog.detect;

/**
 * The latest place of the greatest (or least) count in a window that moves forward over a {@link CountRing}.
 *
 * <p>Remembers its last answer: a window that moves by one is answered in one step while the extreme stays inside.
 */
final class SlidingExtreme {
    private final CountRing ring;
    private final int sign;
    private long bestPlace = -1;
    private long through = -1;

    private SlidingExtreme(CountRing ring, int sign) {
        this.ring = ring;
        this.sign = sign;
    }

    static SlidingExtreme greatest(CountRing ring) {
        return new SlidingExtreme(ring, 1);
    }

    static SlidingExtreme least(CountRing ring) {
        return new SlidingExtreme(ring, -1);
    }

    /** The latest place from {@code low} to {@code high}, both included, with the extreme count. */
    long place(long low, long high) {
        boolean keeps = bestPlace >= low && bestPlace <= high && through <= high;
        long next = keeps ? through + 1 : low;
        long best = keeps ? bestPlace : low;
        long value = (long) sign * ring.at(best);
        for (long place = next; place <= high; place++) {
            long candidate = (long) sign * ring.at(place);
            if (candidate >= value) {
                best = place;
                value = candidate;
            }
        }
        bestPlace = best;
        through = high;
        return best;
    }
}
