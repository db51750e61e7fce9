package tautlog.detect;

import java.math.BigInteger;

/**
 * A sum of squared counts, exact whatever their order: the square of a count takes up to 62 bits, so it is kept in two halves.
 *
 * <p>Room for 2³¹ counts added singly between two other calls, and for 2³² in all: 49 days at 1,000 samples a second.
 */
final class SquareSum {
    private static final long HALF = 0xFFFF_FFFFL;

    private long high;
    private long low;

    void clear() {
        high = 0;
        low = 0;
    }

    void add(int count) {
        long square = (long) count * count;
        high += square >>> 32;
        low += square & HALF;
    }

    void add(SquareSum other) {
        long sum = low + other.low;
        high += other.high + (sum >>> 32);
        low = sum & HALF;
    }

    BigInteger total() {
        return BigInteger.valueOf(high).shiftLeft(32).add(BigInteger.valueOf(low));
    }
}
