package tautlog.detect;

import tautlog.sample.StoredCounts;

/**
 * The latest samples, by their place among the present ones: place 0 is the outing's first present sample.
 *
 * <p>Within a stretch places and numbers differ by a constant. Holds at least {@code capacity} samples back from the latest. Samples
 * that came coded are decoded when somebody asks for them: most of a slack line's never are.
 */
final class CountRing {
    private final int[] ring;
    private final int mask;
    private final RingPieces pieces = new RingPieces();
    private long size;
    private long offset;
    private long stretchFirst;

    CountRing(int capacity) {
        ring = new int[Integer.highestOneBit(Math.max(2, capacity + Run.MOST) - 1) << 1];
        mask = ring.length - 1;
    }

    void append(Piece piece) {
        int at = (int) size & mask;
        int head = Math.min(piece.n, ring.length - at);
        System.arraycopy(piece.counts, piece.from, ring, at, head);
        if (head < piece.n) {
            System.arraycopy(piece.counts, piece.from + head, ring, 0, piece.n - head);
        }
        pieces.add(piece.n, piece.greatest);
        grown(piece.n);
    }

    /** Takes counts that fit in one piece ({@link #cut}) as they are. */
    void append(StoredCounts counts) {
        pieces.add(counts);
        grown(counts.size());
    }

    private void grown(int n) {
        size += n;
        pieces.forgetBefore(size - ring.length);
    }

    /** Makes sure that the samples at the places from {@code first} to {@code last} lie in {@link #samples}. */
    void decode(long first, long last) {
        if (pieces.mayBeCoded(first)) {
            pieces.decode(first, last, ring);
        }
    }

    /** Writes {@code n} samples from {@code place} on, which are held, to the beginning of {@code to}. */
    void copyTo(long place, int n, int[] to) {
        decode(place, place + n - 1);
        int at = (int) place & mask;
        int head = Math.min(n, ring.length - at);
        System.arraycopy(ring, at, to, 0, head);
        System.arraycopy(ring, 0, to, head, n - head);
    }

    /** Where all samples are kept that were decoded. */
    int[] samples() {
        return ring;
    }

    /** Where in {@link #samples} the next one will be put. */
    int next() {
        return (int) size & mask;
    }

    /** How many of {@code n} samples to come will lie one behind the other in {@link #samples}. */
    int cut(int n) {
        return Math.min(n, ring.length - next());
    }

    /** The next sample has number {@code number} and begins a stretch. */
    void beginStretch(long number) {
        offset = number - size;
        stretchFirst = number;
    }

    /** Number of the first sample of the present stretch. */
    long stretchFirst() {
        return stretchFirst;
    }

    /** Place of sample {@code number} of the present stretch. */
    long placeOf(long number) {
        return number - offset;
    }

    /** Number of the sample at {@code place}, which lies in the present stretch. */
    long numberOf(long place) {
        return place + offset;
    }

    /** How many samples came so far: the place of the next one. */
    long size() {
        return size;
    }

    boolean holds(long place) {
        return place >= oldest() && place < size;
    }

    /** The oldest place that is held. */
    long oldest() {
        return Math.max(0, size - ring.length + Run.MOST);
    }

    /** No count from place {@code first} to {@code last}, both held, is greater than this. */
    int greatestBound(long first, long last) {
        return pieces.greatest(first, last);
    }

    /** The greatest count from place {@code first} to {@code last}, both held. */
    int greatest(long first, long last) {
        decode(first, last);
        int from = (int) first & mask;
        int n = (int) (last - first) + 1;
        int head = Math.min(n, ring.length - from);
        int greatest = greatest(ring, from, head);
        return head < n ? Math.max(greatest, greatest(ring, 0, n - head)) : greatest;
    }

    /** The least count from place {@code first} to {@code last}, both held. */
    int least(long first, long last) {
        decode(first, last);
        int from = (int) first & mask;
        int n = (int) (last - first) + 1;
        int head = Math.min(n, ring.length - from);
        int least = least(ring, from, head);
        return head < n ? Math.min(least, least(ring, 0, n - head)) : least;
    }

    /** The sum of the counts from place {@code first} to {@code last}, both held. */
    long sum(long first, long last) {
        decode(first, last);
        long sum = 0;
        for (long place = first; place <= last; place++) {
            sum += ring[(int) place & mask];
        }
        return sum;
    }

    private static int least(int[] counts, int from, int n) {
        int least = Integer.MAX_VALUE;
        for (int i = from; i < from + n; i++) {
            least = Math.min(least, counts[i]);
        }
        return least;
    }

    /** Of {@code n} counts; four at a time: each comparison need not wait for the one before. */
    static int greatest(int[] counts, int from, int n) {
        int a = Integer.MIN_VALUE;
        int b = a;
        int c = a;
        int d = a;
        int i = from;
        for (int end = from + n - 3; i < end; i += 4) {
            a = Math.max(a, counts[i]);
            b = Math.max(b, counts[i + 1]);
            c = Math.max(c, counts[i + 2]);
            d = Math.max(d, counts[i + 3]);
        }
        for (int end = from + n; i < end; i++) {
            a = Math.max(a, counts[i]);
        }
        return Math.max(Math.max(a, b), Math.max(c, d));
    }

    int at(long place) {
        decode(place, place);
        return ring[(int) place & mask];
    }
}
