package tautlog.recording;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Bytes being written, little-endian; grows. The layouts are those of {@code analyzer/RECORDING.md}, "Numbers". */
final class ByteWriter implements RunBits {
    private static final VarHandle LONG = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle INT = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);
    private static final int SPARE = 8;

    private byte[] bytes = new byte[256];
    private int size;

    int size() {
        return size;
    }

    void clear() {
        size = 0;
    }

    byte[] array() {
        return bytes;
    }

    byte[] toBytes() {
        return Arrays.copyOf(bytes, size);
    }

    void u8(int value) {
        room(1);
        bytes[size++] = (byte) value;
    }

    void u16(int value) {
        u8(value);
        u8(value >>> 8);
    }

    void i32(int value) {
        room(4);
        LONG.set(bytes, size, (long) value);
        size += 4;
    }

    void i64(long value) {
        room(8);
        LONG.set(bytes, size, value);
        size += 8;
    }

    /** {@code n} numbers from {@code values[from]} on, as {@link #i32} each. */
    void i32s(int[] values, int from, int n) {
        room(4 * n);
        byte[] to = bytes;
        int at = size;
        for (int i = 0; i < n; i++, at += 4) {
            INT.set(to, at, values[from + i]);
        }
        size = at;
    }

    /** The 64 bits of a double. */
    void f64(double value) {
        i64(Double.doubleToRawLongBits(value));
    }

    /** Seven bits a byte, least first, the top bit says that more follow; {@code value} is unsigned. */
    void varint(long value) {
        room(10);
        long rest = value;
        while ((rest & ~0x7FL) != 0) {
            bytes[size++] = (byte) (rest | 0x80);
            rest >>>= 7;
        }
        bytes[size++] = (byte) rest;
    }

    /** A signed number as a {@link #varint}: 0, -1, 1, -2 become 0, 1, 2, 3. */
    void zigzag(long value) {
        varint((value << 1) ^ (value >> 63));
    }

    void raw(byte[] source, int from, int length) {
        room(length);
        System.arraycopy(source, from, bytes, size, length);
        size += length;
    }

    /** A length as varint, then UTF-8. */
    void text(String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        varint(utf8.length);
        raw(utf8, 0, utf8.length);
    }

    /**
     * Packs {@code values[i] - base} (unsigned) into {@code width} bits each, least significant bit first, and fills up
     * the last byte with zeros.
     *
     * @param width 0 to 56, or 64
     */
    void packed(long[] values, int from, int n, long base, int width) {
        if (width == 64) {
            for (int i = 0; i < n; i++) {
                i64(values[from + i] - base);
            }
            return;
        }
        int length = (int) (((long) n * width + 7) >>> 3);
        room(length + 1);
        Arrays.fill(bytes, size, size + length + SPARE, (byte) 0);
        long bit = 0;
        for (int i = 0; i < n; i++, bit += width) {
            int at = size + (int) (bit >>> 3);
            LONG.set(bytes, at, (long) LONG.get(bytes, at) | ((values[from + i] - base) << (bit & 7)));
        }
        size += length;
    }

    /** The numbers that a reader does not do without, {@link #packed}. */
    @Override
    public void put(long[] numbers, int known, int n, long base, int width) {
        packed(numbers, known, n - known, base, width);
    }

    private void room(int more) {
        if (size + more + SPARE > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(bytes.length * 2, size + more + SPARE));
        }
    }
}
