package tautlog.recording;

/** Reads what {@link BitWriter} wrote. Reading past the end throws an {@link IndexOutOfBoundsException}. */
final class BitReader {
    private static final int LONGEST = 32;

    private final ByteReader in;
    private long pending;
    private int filled;

    BitReader(ByteReader in) {
        this.in = in;
    }

    /** @param bits 0 to 32 */
    long bits(int bits) {
        while (filled < bits) {
            load();
        }
        long value = pending & ((1L << bits) - 1);
        drop(bits);
        return value;
    }

    private void load() {
        pending |= (long) in.u8() << filled;
        filled += 8;
    }

    private void drop(int bits) {
        pending >>>= bits;
        filled -= bits;
    }

    /** The inverse of {@link BitWriter#number}. */
    int number(int scale) {
        while (pending == 0 && filled <= LONGEST) {
            load();
        }
        int zeros = Long.numberOfTrailingZeros(pending);
        if (zeros > LONGEST - scale) {
            throw new IndexOutOfBoundsException("a number of more than 32 bits");
        }
        drop(zeros + 1);
        int below = zeros + scale;
        long low = bits(Math.min(below, 16));
        long high = bits(Math.max(0, below - 16));
        int zigzag = (int) ((1L << below) + (high << 16) + low - (1L << scale));
        return (zigzag >>> 1) ^ -(zigzag & 1);
    }

    /** The inverse of {@link BitWriter#number(long, int)}. */
    long longNumber(int scale) {
        int below = 0;
        while (bits(1) == 0) {
            if (++below > 64) {
                throw new IndexOutOfBoundsException("a number of more than 64 bits");
            }
        }
        long low = bits(scale);
        long top = below == 64 ? 0 : 1L << below;
        long zigzag = ((wide(below) + top - 1) << scale) | low;
        return (zigzag >>> 1) ^ -(zigzag & 1);
    }

    private long wide(int bits) {
        long low = bits(Math.min(bits, LONGEST));
        return low | (bits(Math.max(0, bits - LONGEST)) << 32);
    }
}
