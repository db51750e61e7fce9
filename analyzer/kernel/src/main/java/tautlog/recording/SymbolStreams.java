package tautlog.recording;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Numbers of −32 to 31 in four streams, each a quarter of them, in one {@link SymbolCode}: four, because a processor can follow four
 * streams at once, while in one each code must wait until the length of the one before it is known.
 */
final class SymbolStreams {
    private static final int STREAMS = 4;
    private static final VarHandle LONG = ByteReader.LONG;
    private static final VarHandle SHORT = MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);
    /** Entries taken from one load of eight bytes, of which 57 bits are sure to be there. */
    private static final int ENTRIES = 4;

    private final SymbolCode code = new SymbolCode();
    private final BitWriter bits = new BitWriter();
    private final ByteWriter content = new ByteWriter();

    /** Appends {@code n} numbers, each with {@link SymbolCode#MIDDLE} added, in the best code; nothing when there is none. */
    void encode(byte[] symbols, int n, int[] often, ByteWriter out) {
        if (n == 0) {
            return;
        }
        code.fit(often);
        code.write(out);
        content.clear();
        for (int stream = 0; stream < STREAMS; stream++) {
            bits.clear();
            for (int i = from(stream, n); i < from(stream + 1, n); i++) {
                bits.bits(code.code(symbols[i]), code.length(symbols[i]));
            }
            out.varint(bits.size());
            bits.finish(content);
        }
        out.raw(content.array(), 0, content.size());
    }

    private static int from(int stream, int n) {
        return (int) ((long) n * stream / STREAMS);
    }

    /**
     * Reads {@code n} numbers to {@code out}.
     *
     * @param out has room for one more
     * @throws IndexOutOfBoundsException if the bytes are no such streams
     */
    void decode(ByteReader in, int n, byte[] out) {
        if (n == 0) {
            return;
        }
        code.read(in);
        int[] ends = new int[STREAMS];
        int length = 0;
        for (int stream = 0; stream < STREAMS; stream++) {
            length += in.count(in.left() - length);
            ends[stream] = length;
        }
        int at = in.at();
        in.skip(length);
        for (int stream = 0; stream < STREAMS; stream++) {
            ends[stream] += at;
        }
        decode(in.array(), at, ends, n, out);
    }

    private void decode(byte[] in, int at, int[] ends, int n, byte[] out) {
        int[] table = code.table();
        int mask = (1 << code.width()) - 1;
        long a = 8L * at;
        long b = 8L * ends[0];
        long c = 8L * ends[1];
        long d = 8L * ends[2];
        int i = 0;
        int j = from(1, n);
        int k = from(2, n);
        int l = from(3, n);
        int safeI = j - 2 * ENTRIES;
        int safeJ = k - 2 * ENTRIES;
        int safeK = l - 2 * ENTRIES;
        int safeL = n - 2 * ENTRIES;
        while (i <= safeI && j <= safeJ && k <= safeK && l <= safeL) {
            long w = (long) LONG.get(in, (int) (a >>> 3)) >>> (a & 7);
            long x = (long) LONG.get(in, (int) (b >>> 3)) >>> (b & 7);
            long y = (long) LONG.get(in, (int) (c >>> 3)) >>> (c & 7);
            long z = (long) LONG.get(in, (int) (d >>> 3)) >>> (d & 7);
            for (int entry = 0; entry < ENTRIES; entry++) {
                int p = table[(int) w & mask];
                int q = table[(int) x & mask];
                int r = table[(int) y & mask];
                int s = table[(int) z & mask];
                SHORT.set(out, i, SymbolCode.Entry.numbers(p));
                SHORT.set(out, j, SymbolCode.Entry.numbers(q));
                SHORT.set(out, k, SymbolCode.Entry.numbers(r));
                SHORT.set(out, l, SymbolCode.Entry.numbers(s));
                i += SymbolCode.Entry.count(p);
                j += SymbolCode.Entry.count(q);
                k += SymbolCode.Entry.count(r);
                l += SymbolCode.Entry.count(s);
                w >>>= SymbolCode.Entry.length(p);
                x >>>= SymbolCode.Entry.length(q);
                y >>>= SymbolCode.Entry.length(r);
                z >>>= SymbolCode.Entry.length(s);
                a += SymbolCode.Entry.length(p);
                b += SymbolCode.Entry.length(q);
                c += SymbolCode.Entry.length(r);
                d += SymbolCode.Entry.length(s);
            }
        }
        finish(in, a, ends[0], out, i, from(1, n));
        finish(in, b, ends[1], out, j, from(2, n));
        finish(in, c, ends[2], out, k, from(3, n));
        finish(in, d, ends[3], out, l, n);
    }

    /** The last numbers of a stream, one at a time; it must end with them. */
    private void finish(byte[] in, long bit, int end, byte[] out, int from, int to) {
        int[] table = code.table();
        int mask = (1 << code.width()) - 1;
        long at = bit;
        for (int i = from; i < to; i++) {
            int entry = table[(int) ((long) LONG.get(in, (int) (at >>> 3)) >>> (at & 7)) & mask];
            out[i] = (byte) entry;
            at += SymbolCode.Entry.firstLength(entry);
        }
        if ((at + 7) >>> 3 != end) {
            throw new IndexOutOfBoundsException("a stream of codes that ends at byte " + end + " is read to bit " + at);
        }
    }
}
