package tautlog.recording;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Reads what {@link ByteWriter} wrote.
 *
 * <p>Reading past the end throws an {@link IndexOutOfBoundsException}; who reads a stored block takes that for damage.
 */
final class ByteReader {
    static final VarHandle LONG = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    static final VarHandle INT = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

    /** Four numbers of so many bits lie in any eight bytes, wherever in the first of them they begin. */
    private static final int FOUR_IN_ONE = 14;

    private final byte[] bytes;
    private final int end;
    private int at;

    ByteReader(byte[] bytes, int from, int end) {
        this.bytes = bytes;
        this.at = from;
        this.end = end;
    }

    byte[] array() {
        return bytes;
    }

    int at() {
        return at;
    }

    int left() {
        return end - at;
    }

    void skip(int length) {
        require(length);
        at += length;
    }

    int u8() {
        require(1);
        return bytes[at++] & 0xFF;
    }

    int u16() {
        return u8() | (u8() << 8);
    }

    int i32() {
        require(4);
        int value = (int) INT.get(bytes, at);
        at += 4;
        return value;
    }

    long i64() {
        require(8);
        long value = (long) LONG.get(bytes, at);
        at += 8;
        return value;
    }

    double f64() {
        return Double.longBitsToDouble(i64());
    }

    long varint() {
        // most are of one byte
        return at < end && bytes[at] >= 0 ? bytes[at++] : longVarint();
    }

    private long longVarint() {
        long value = 0;
        for (int shift = 0; shift < 70; shift += 7) {
            int next = u8();
            value |= (long) (next & 0x7F) << shift;
            if (next < 0x80) {
                return value;
            }
        }
        throw new IndexOutOfBoundsException("a number of more than 10 bytes at " + at);
    }

    long zigzag() {
        long value = varint();
        return (value >>> 1) ^ -(value & 1);
    }

    /** A {@link #varint} that must be 0 to {@code greatest}: guards every allocation against a wrong length. */
    int count(int greatest) {
        long value = varint();
        if (value < 0 || value > greatest) {
            throw new IndexOutOfBoundsException("a count of " + value + " where at most " + greatest + " can be");
        }
        return (int) value;
    }

    String text() {
        int length = count(left());
        require(length);
        String text = new String(bytes, at, length, StandardCharsets.UTF_8);
        at += length;
        return text;
    }

    byte[] raw(int length) {
        require(length);
        byte[] raw = Arrays.copyOfRange(bytes, at, at + length);
        at += length;
        return raw;
    }

    /** The inverse of {@link ByteWriter#packed}. */
    void packed(long[] out, int from, int n, long base, int width) {
        if (width == 64) {
            for (int i = 0; i < n; i++) {
                out[from + i] = base + i64();
            }
            return;
        }
        if (width == 0) {
            Arrays.fill(out, from, from + n, base);
            return;
        }
        if (width > 56) {
            throw new IndexOutOfBoundsException("a width of " + width + " bits");
        }
        int length = (int) (((long) n * width + 7) >>> 3);
        require(length);
        long mask = (1L << width) - 1;
        int bit = 0;
        int i = 0;
        int safe = Math.min(n, (bytes.length - 8 - at) * 8 / width);
        if (width <= FOUR_IN_ONE) {
            i = fours(out, from, safe, base, width);
            bit = i * width;
        }
        for (; i < safe; i++, bit += width) {
            out[from + i] = base + (((long) LONG.get(bytes, at + (bit >>> 3)) >>> (bit & 7)) & mask);
        }
        for (; i < n; i++, bit += width) {
            out[from + i] = base + ((eight(at + (bit >>> 3)) >>> (bit & 7)) & mask);
        }
        at += length;
    }

    /** Four numbers of at most 14 bits from each load of eight bytes; how many were read of {@code n}. */
    private int fours(long[] out, int from, int n, long base, int width) {
        long mask = (1L << width) - 1;
        int two = 2 * width;
        int three = 3 * width;
        int bit = 0;
        int i = 0;
        for (; i + 4 <= n; i += 4, bit += 4 * width) {
            long x = (long) LONG.get(bytes, at + (bit >>> 3)) >>> (bit & 7);
            out[from + i] = base + (x & mask);
            out[from + i + 1] = base + (x >>> width & mask);
            out[from + i + 2] = base + (x >>> two & mask);
            out[from + i + 3] = base + (x >>> three & mask);
        }
        return i;
    }

    private long eight(int offset) {
        if (offset + 8 <= bytes.length) {
            return (long) LONG.get(bytes, offset);
        }
        long value = 0;
        for (int i = 0; offset + i < bytes.length; i++) {
            value |= (bytes[offset + i] & 0xFFL) << (8 * i);
        }
        return value;
    }

    private void require(int length) {
        if (length < 0 || length > end - at) {
            throw new IndexOutOfBoundsException(length + " bytes wanted at " + at + ", " + left() + " left");
        }
    }
}
