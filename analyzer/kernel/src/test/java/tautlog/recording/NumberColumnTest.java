package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import java.util.stream.LongStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class NumberColumnTest {
    private static byte[] encoded(long... values) {
        ByteWriter out = new ByteWriter();
        NumberColumn.encode(values, values.length, out);
        return out.toBytes();
    }

    private static long[] decoded(byte[] bytes, int n) {
        ByteReader in = new ByteReader(bytes, 0, bytes.length);
        long[] out = new long[n];
        NumberColumn.decode(in, out, n);
        assertEquals(0, in.left());
        return out;
    }

    @Property(tries = 500)
    void givesBackWhatCameIn(@ForAll long[] values, @ForAll @IntRange(max = 63) int shift) {
        long[] some = LongStream.of(values).map(value -> value >> shift).toArray();
        assertArrayEquals(some, decoded(encoded(some), some.length));
    }

    @Property(tries = 500)
    void everyScaleGivesBackEveryNumberInAsManyBitsAsWereSaid(
            @ForAll long value, @ForAll @IntRange(max = 32) int scale) {
        for (long number : new long[] {value, value >> 40, 0, -1, 1, Long.MIN_VALUE, Long.MAX_VALUE}) {
            BitWriter bits = new BitWriter();
            bits.number(number, scale);
            ByteWriter bytes = new ByteWriter();
            bits.finish(bytes);
            assertEquals((BitWriter.length(number, scale) + 7) / 8, bytes.size());
            assertEquals(number, new BitReader(new ByteReader(bytes.array(), 0, bytes.size())).longNumber(scale));
        }
    }

    /** Of 32 bits both codes are one. */
    @Property(tries = 500)
    void isTheCodeOfPackedPieces(@ForAll int value, @ForAll @IntRange(max = 20) int scale) {
        ByteWriter one = new ByteWriter();
        BitWriter bits = new BitWriter();
        bits.number(value, scale);
        bits.finish(one);
        ByteWriter other = new ByteWriter();
        bits.clear();
        bits.number((long) value, scale);
        bits.finish(other);
        assertArrayEquals(one.toBytes(), other.toBytes());
    }

    /** By hand, from RECORDING.md: at scale 0 the bits of 0, −1, 1 and 2 are 1, 010, 011 and 00110. */
    @Test
    void isWhatThePageSays() {
        assertEquals("00d50b", HexFormat.of().formatHex(encoded(0, -1, 0, 1, 0, 0, -1)));
        assertEquals("00cf00", HexFormat.of().formatHex(encoded(0, 0, 0, 0, 2)));
    }

    @Test
    void takesABitForEachZero() {
        assertEquals(1 + 1_000 / 8, encoded(new long[1_000]).length);
    }

    @Test
    void isRefusedWhereItIsTornOrNoColumn() {
        byte[] whole = encoded(1, 2, Long.MIN_VALUE, 4);
        for (int length = 0; length < whole.length; length++) {
            ByteReader torn = new ByteReader(whole, 0, length);
            assertThrows(IndexOutOfBoundsException.class, () -> NumberColumn.decode(torn, new long[4], 4));
        }
        whole[0] = 33;
        assertThrows(IndexOutOfBoundsException.class, () -> decoded(whole, 4));
        IndexOutOfBoundsException endless =
                assertThrows(IndexOutOfBoundsException.class, () -> decoded(new byte[100], 1));
        assertTrue(String.valueOf(endless.getMessage()).contains("64 bits"), endless::toString);
    }
}
