package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class CobsTest {
    private static byte[] encoded(byte[] plain) {
        byte[] out = new byte[plain.length + plain.length / 254 + 2];
        return Arrays.copyOf(out, Cobs.encode(plain, plain.length, out, 0));
    }

    private static byte[] decoded(byte[] coded) {
        byte[] copy = coded.clone();
        int n = Cobs.decode(copy, copy.length);
        assertEquals(true, n >= 0, "decodes");
        return Arrays.copyOf(copy, n);
    }

    /** The bytes {@code from} to {@code to}, counting up. */
    private static byte[] range(int from, int to) {
        byte[] bytes = new byte[to - from + 1];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (from + i);
        }
        return bytes;
    }

    private static byte[] join(byte[]... parts) {
        return WireVectorsTest.join(parts);
    }

    private static byte[] hex(String text) {
        return WireVectorsTest.hex(text);
    }

    private static void assertCode(byte[] plain, byte[] coded) {
        assertArrayEquals(coded, encoded(plain));
        assertArrayEquals(plain, decoded(coded));
    }

    @ParameterizedTest(name = "{0} <-> {1}")
    @CsvFileSource(resources = "/wire/cobs_vectors.csv", numLinesToSkip = 1)
    void agreesWithPublishedVectors(String plain, String coded) {
        assertCode(hex(plain), hex(coded));
    }

    /** Source: the long vectors named in {@code wire/cobs_vectors.csv}. */
    @Test
    void agreesWithPublishedVectorsAroundAFullGroup() {
        assertCode(range(0x01, 0xfe), join(hex("ff"), range(0x01, 0xfe)));
        assertCode(range(0x00, 0xfe), join(hex("01ff"), range(0x01, 0xfe)));
        assertCode(range(0x01, 0xff), join(hex("ff"), range(0x01, 0xfe), hex("02ff")));
        assertCode(join(range(0x02, 0xff), hex("00")), join(hex("ff"), range(0x02, 0xff), hex("0101")));
        assertCode(join(range(0x03, 0xff), hex("0001")), join(hex("fe"), range(0x03, 0xff), hex("0201")));
    }

    @Test
    void acceptsTheNeedlessLengthByteAfterAFullGroup() {
        assertArrayEquals(range(0x01, 0xfe), decoded(join(hex("ff"), range(0x01, 0xfe), hex("01"))));
    }

    @Test
    void refusesALengthByteThatPointsBeyondTheEnd() {
        assertEquals(Cobs.BAD, Cobs.decode(hex("0311"), 2));
        assertEquals(Cobs.BAD, Cobs.decode(hex("021102"), 3));
    }

    @Property(tries = 500)
    void takesEveryZeroOutAndGivesBackWhatWentIn(@ForAll @Size(max = 600) byte[] plain) {
        byte[] coded = encoded(plain);

        for (byte b : coded) {
            assertEquals(true, b != 0);
        }
        assertArrayEquals(plain, decoded(coded));
    }
}
