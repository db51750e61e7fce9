package tautlog.detect;

import org.jspecify.annotations.Nullable;
import tautlog.sample.StoredCounts;

/**
 * In which pieces the samples of a {@link CountRing} came: the greatest of each, and what is not decoded yet.
 *
 * <p>Pieces lie end to end, in order of their places; the oldest are forgotten. Whoever asks to decode the latest finds them soonest,
 * whoever asks for bounds those near the place asked for before.
 */
final class RingPieces {
    private long[] first = new long[64];
    private int[] greatest = new int[64];
    private @Nullable StoredCounts[] coded = new @Nullable StoredCounts[64];
    private int head;
    private int size;
    /** The piece whose bounds were asked for last, counted from the oldest. */
    private int found;

    private long end;
    /** No place behind this one is coded. */
    private long codedThrough = -1;
    /** The same, when the latest coded piece is none any more. */
    private long codedBefore = -1;

    /** A piece of {@code n} samples comes behind those that are here. */
    void add(int n, int high) {
        if (size == first.length) {
            grow();
        }
        int at = slot(size++);
        first[at] = end;
        greatest[at] = high;
        coded[at] = null;
        end += n;
    }

    /** The same, of samples that are not written to the ring yet. */
    void add(StoredCounts counts) {
        add(counts.size(), counts.greatest());
        coded[slot(size - 1)] = counts;
        codedBefore = codedThrough;
        codedThrough = end - 1;
    }

    /** Pieces that begin before {@code place} are not asked for any more. */
    void forgetBefore(long place) {
        while (size > 0 && first[head] < place) {
            coded[head] = null;
            head = slot(1);
            size--;
            found = Math.max(0, found - 1);
        }
    }

    /** False when surely none of the places from {@code place} on is still coded. */
    boolean mayBeCoded(long place) {
        return place <= codedThrough;
    }

    /** Writes the samples of the places from {@code from} to {@code through} that are still coded where they belong. */
    void decode(long from, long through, int[] ring) {
        for (int i = size - 1; i >= 0; i--) {
            int at = slot(i);
            StoredCounts counts = coded[at];
            if (counts != null && first[at] <= through) {
                counts.copyTo(ring, (int) first[at] & (ring.length - 1));
                coded[at] = null;
            }
            if (first[at] <= from) {
                break;
            }
        }
        if (through >= codedThrough) {
            codedBefore = Math.min(codedBefore, from - 1);
            codedThrough = codedBefore;
        }
    }

    /** No count from place {@code from} to {@code through}, both held, is greater. */
    int greatest(long from, long through) {
        int i = Math.min(found, size - 1);
        while (i > 0 && first[slot(i)] > from) {
            i--;
        }
        while (i < size - 1 && first[slot(i + 1)] <= from) {
            i++;
        }
        int high = greatest[slot(i)];
        while (i < size - 1 && first[slot(i + 1)] <= through) {
            high = Math.max(high, greatest[slot(++i)]);
        }
        found = i;
        return high;
    }

    private int slot(int i) {
        return (head + i) & (first.length - 1);
    }

    private void grow() {
        int room = 2 * size;
        long[] moreFirst = new long[room];
        int[] moreGreatest = new int[room];
        @Nullable StoredCounts[] moreCoded = new @Nullable StoredCounts[room];
        for (int i = 0; i < size; i++) {
            int at = slot(i);
            moreFirst[i] = first[at];
            moreGreatest[i] = greatest[at];
            moreCoded[i] = coded[at];
        }
        first = moreFirst;
        greatest = moreGreatest;
        coded = moreCoded;
        head = 0;
    }
}
