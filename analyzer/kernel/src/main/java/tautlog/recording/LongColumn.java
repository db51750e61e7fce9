package tautlog.recording;

/**
 * A list of whole numbers in groups of 128: least (zigzag), width (one byte), then each number − least in that many bits.
 *
 * <p>A group of equal numbers costs two or three bytes. Widths of 57 to 63 bits are stored as 64.
 */
final class LongColumn {
    private static final int GROUP = 128;

    private LongColumn() {}

    static void encode(long[] values, int n, ByteWriter out) {
        for (int from = 0; from < n; from += GROUP) {
            encodeGroup(values, from, Math.min(GROUP, n - from), out);
        }
    }

    private static void encodeGroup(long[] values, int from, int n, ByteWriter out) {
        long least = values[from];
        long greatest = least;
        for (int i = 1; i < n; i++) {
            least = Math.min(least, values[from + i]);
            greatest = Math.max(greatest, values[from + i]);
        }
        int bits = 64 - Long.numberOfLeadingZeros(greatest - least);
        int width = bits > 56 ? 64 : bits;
        out.zigzag(least);
        out.u8(width);
        out.packed(values, from, n, least, width);
    }

    /** As {@link #decode(ByteReader, long[], int, int)} from the start of {@code out} on. */
    static boolean decode(ByteReader in, long[] out, int n) {
        return decode(in, out, 0, n);
    }

    /**
     * Decodes {@code n} numbers to {@code out[at]} and behind.
     *
     * @return whether they were stored as equal, all of them: then they are
     */
    static boolean decode(ByteReader in, long[] out, int at, int n) {
        boolean areEqual = true;
        for (int from = 0; from < n; from += GROUP) {
            long least = in.zigzag();
            int width = in.u8();
            in.packed(out, at + from, Math.min(GROUP, n - from), least, width);
            areEqual &= width == 0 && least == out[at];
        }
        return areEqual;
    }
}
