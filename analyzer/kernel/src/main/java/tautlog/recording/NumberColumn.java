package tautlog.recording;

/**
 * A list of whole numbers near 0 with a few that are far from it: a scale (one byte), then each number as {@link
 * BitWriter#number(long, int)}, the last byte filled up with zeros.
 *
 * <p>A number takes one bit at least, which is why a damaged count of them cannot ask for all memory.
 */
final class NumberColumn {
    /** Chosen: numbers of which none is smaller are rare. */
    private static final int GREATEST_SCALE = 32;

    private NumberColumn() {}

    static void encode(long[] values, int n, ByteWriter out) {
        int scale = bestScale(values, n);
        BitWriter bits = new BitWriter();
        for (int i = 0; i < n; i++) {
            bits.number(values[i], scale);
        }
        out.u8(scale);
        bits.finish(out);
    }

    private static int bestScale(long[] values, int n) {
        int best = 0;
        long least = Long.MAX_VALUE;
        for (int scale = 0; scale <= GREATEST_SCALE; scale++) {
            long length = 0;
            for (int i = 0; i < n; i++) {
                length += BitWriter.length(values[i], scale);
            }
            if (length < least) {
                least = length;
                best = scale;
            }
        }
        return best;
    }

    /** @throws IndexOutOfBoundsException if the bytes are no such column */
    static void decode(ByteReader in, long[] out, int n) {
        int scale = in.u8();
        if (scale > GREATEST_SCALE) {
            throw new IndexOutOfBoundsException("a column of numbers of scale " + scale);
        }
        BitReader bits = new BitReader(in);
        for (int i = 0; i < n; i++) {
            out[i] = bits.longNumber(scale);
        }
    }
}
