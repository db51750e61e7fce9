package tautlog.detect;

/**
 * The latest place of the greatest (or least) count in a window that moves forward over a {@link CountRing}.
 *
 * <p>Keeps, in order, the places that can still become the answer: each is more extreme than all after it. So every sample is looked
 * at once, also while the tension rises steadily and the least leaves the window with every step.
 */
final class SlidingExtreme {
    private final CountRing ring;
    private final int sign;
    private final long[] places;
    /** The window asked for last; one that goes back begins anew. */
    private long from;

    private long through = -1;
    private int first;
    private int size;

    private SlidingExtreme(CountRing ring, int longestWindow, int sign) {
        this.ring = ring;
        this.sign = sign;
        places = new long[Integer.highestOneBit(longestWindow) << 1];
    }

    /** @param longestWindow in samples */
    static SlidingExtreme greatest(CountRing ring, int longestWindow) {
        return new SlidingExtreme(ring, longestWindow, 1);
    }

    /** @param longestWindow in samples */
    static SlidingExtreme least(CountRing ring, int longestWindow) {
        return new SlidingExtreme(ring, longestWindow, -1);
    }

    /** The latest place from {@code low} to {@code high}, both included, with the extreme count. */
    long place(long low, long high) {
        if (low < from || low > through || high < through) {
            through = low - 1;
            size = 0;
        }
        if (through < high) {
            add(through + 1, high);
        }
        from = low;
        through = high;
        forgetBefore(low);
        return places[first];
    }

    private void add(long firstNew, long lastNew) {
        ring.decode(firstNew, lastNew);
        int[] samples = ring.samples();
        int mask = samples.length - 1;
        for (long place = firstNew; place <= lastNew; place++) {
            forgetBefore(place - places.length + 1);
            long value = (long) sign * samples[(int) place & mask];
            while (size > 0 && (long) sign * samples[(int) at(size - 1) & mask] <= value) {
                size--;
            }
            places[(first + size++) & (places.length - 1)] = place;
        }
    }

    private long at(int i) {
        return places[(first + i) & (places.length - 1)];
    }

    private void forgetBefore(long place) {
        while (size > 0 && places[first] < place) {
            first = (first + 1) & (places.length - 1);
            size--;
        }
    }
}
