package tautlog.recording;

import java.lang.invoke.VarHandle;
import java.util.Arrays;

/** The planes of a block, being read; {@link Planes} wrote them. Immutable. */
final class PlaneBits {
    private static final VarHandle INT = ByteReader.INT;

    private final byte[] bytes;
    private final int at;
    private final int whole;
    private final int rest;

    /**
     * @param bytes which go on for seven bytes behind the planes
     * @param at where the first plane begins
     * @param bits of each lane, in all planes
     */
    PlaneBits(byte[] bytes, int at, int bits) {
        this.bytes = bytes;
        this.at = at;
        this.whole = bits / Planes.WORD;
        this.rest = bits % Planes.WORD;
    }

    /** In bytes. */
    int length() {
        return whole * Planes.BYTES + RunCodec.bytes(RunCodec.RUN, rest);
    }

    /** Writes {@code base} plus the number of {@code width} bits, 0 to 32, that begins with bit {@code bit} of each lane. */
    void unpack(int bit, int width, int base, int[] out, int to) {
        int stored = whole * Planes.WORD - bit;
        if (width == 0) {
            Arrays.fill(out, to, to + RunCodec.RUN, base);
        } else if (stored < width) {
            unpackRest(bit, width, Math.max(0, stored), base, out, to);
        } else if (bit % Planes.WORD + width <= Planes.WORD) {
            unpackOne(bytes, plane(bit), bit % Planes.WORD, mask(width), base, out, to);
        } else {
            unpackTwo(bytes, plane(bit), bit % Planes.WORD, mask(width), base, out, to);
        }
    }

    private int plane(int bit) {
        return at + bit / Planes.WORD * Planes.BYTES;
    }

    /** @param width 1 to 32 */
    private static int mask(int width) {
        return -1 >>> (Planes.WORD - width);
    }

    private static void unpackOne(byte[] in, int plane, int shift, int mask, int base, int[] out, int to) {
        for (int lane = 0; lane < RunCodec.RUN; lane++) {
            out[to + lane] = base + (((int) INT.get(in, plane + 4 * lane) >>> shift) & mask);
        }
    }

    /** The number begins in one plane and ends in the next. */
    private static void unpackTwo(byte[] in, int plane, int shift, int mask, int base, int[] out, int to) {
        int next = plane + Planes.BYTES;
        int up = Planes.WORD - shift;
        for (int lane = 0; lane < RunCodec.RUN; lane++) {
            int word = (int) INT.get(in, plane + 4 * lane) >>> shift | (int) INT.get(in, next + 4 * lane) << up;
            out[to + lane] = base + (word & mask);
        }
    }

    /** The number ends in the last plane, of which only {@code rest} bits of each lane are stored; {@code low} bits of it lie before that. */
    private void unpackRest(int bit, int width, int low, int base, int[] out, int to) {
        if (low > 0) {
            unpackOne(bytes, plane(bit), bit % Planes.WORD, mask(low), base, out, to);
        } else {
            Arrays.fill(out, to, to + RunCodec.RUN, base);
        }
        int from = at + whole * Planes.BYTES;
        int first = Math.max(0, bit - whole * Planes.WORD);
        long mask = (1L << (width - low)) - 1;
        for (int lane = 0; lane < RunCodec.RUN; lane++) {
            int p = lane * rest + first;
            long word = (long) ByteReader.LONG.get(bytes, from + (p >>> 3)) >>> (p & 7);
            out[to + lane] += (int) (word & mask) << low;
        }
    }
}
