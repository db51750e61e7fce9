package tautlog.recording;

/** Bits being written, the least significant first; grows by way of a {@link ByteWriter}. */
final class BitWriter {
    private final ByteWriter out = new ByteWriter();
    private long pending;
    private int filled;

    void clear() {
        out.clear();
        pending = 0;
        filled = 0;
    }

    /** @param bits 0 to 32 of {@code value}, whose other bits are 0 */
    void bits(long value, int bits) {
        pending |= value << filled;
        filled += bits;
        while (filled >= 8) {
            out.u8((int) pending);
            pending >>>= 8;
            filled -= 8;
        }
    }

    /**
     * A whole number, the shorter the nearer to 0: of z = zigzag(value) + 2^{@code scale} all bits below the highest, after as many
     * zeros as there are more of them than {@code scale}, and a one.
     */
    void number(int value, int scale) {
        long z = (((value << 1) ^ (value >> 31)) & 0xFFFF_FFFFL) + (1L << scale);
        int below = 63 - Long.numberOfLeadingZeros(z);
        int zeros = below - scale;
        bits(0, zeros);
        bits(1, 1);
        bits(z & 0xFFFF & ((1L << below) - 1), Math.min(below, 16));
        bits((z & ((1L << below) - 1)) >>> 16, Math.max(0, below - 16));
    }

    /** How many bits {@link #number} takes. */
    static int length(int value, int scale) {
        long z = (((value << 1) ^ (value >> 31)) & 0xFFFF_FFFFL) + (1L << scale);
        return 2 * (63 - Long.numberOfLeadingZeros(z)) + 1 - scale;
    }

    /** The same of 64 bits: z + 2^{@code scale}, which may take 65, in two parts. */
    void number(long value, int scale) {
        long zigzag = (value << 1) ^ (value >> 63);
        int below = bitsBelow(zigzag, scale);
        wide(0, below);
        bits(1, 1);
        wide(zigzag, scale);
        wide((zigzag >>> scale) + 1, below);
    }

    /** How many bits {@link #number(long, int)} takes. */
    static int length(long value, int scale) {
        return 2 * bitsBelow((value << 1) ^ (value >> 63), scale) + 1 + scale;
    }

    /** Bits of (z >>> scale) + 1 below its highest; 64 when that is 2^64. */
    private static int bitsBelow(long zigzag, int scale) {
        long above = (zigzag >>> scale) + 1;
        return above == 0 ? 64 : 63 - Long.numberOfLeadingZeros(above);
    }

    /** The lowest {@code bits} of {@code value}, 0 to 64. */
    private void wide(long value, int bits) {
        int first = Math.min(bits, 32);
        bits(value & ((1L << first) - 1), first);
        int second = bits - first;
        bits((value >>> 32) & ((1L << second) - 1), second);
    }

    /** Fills up the last byte with zeros and appends all to {@code to}. */
    void finish(ByteWriter to) {
        if (filled > 0) {
            out.u8((int) pending);
            pending = 0;
            filled = 0;
        }
        to.raw(out.array(), 0, out.size());
    }

    /** Whole bytes so far, the one begun included. */
    int size() {
        return out.size() + (filled > 0 ? 1 : 0);
    }
}
