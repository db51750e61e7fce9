package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class FrameDecoderTest {
    private static final int KIND_TENSION = 2;
    private static final int KIND_SHAFT = 3;

    private static byte[] hex(String text) {
        return WireVectorsTest.hex(text);
    }

    private static byte[] frame(int kind, byte[] payload) {
        byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
        return Arrays.copyOf(out, new FrameEncoder().raw(out, 0, kind, 9, payload));
    }

    private static void assertRejected(FrameFault fault, byte[] stream) {
        assertEquals(List.of(fault.name()), FrameText.of(stream));
    }

    /** The payload of the HELLO vector, changed at {@code at}. */
    private static byte[] hello(int at, String bytes) {
        byte[] body = WireVectorsTest.HELLO.clone();
        Cobs.decode(body, body.length - 1);
        byte[] payload = Arrays.copyOfRange(body, 2, 35);
        byte[] change = hex(bytes);
        System.arraycopy(change, 0, payload, at, change.length);
        return payload;
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvFileSource(resources = "/wire/crc32c_vectors.csv", numLinesToSkip = 1)
    void writesThePublishedChecksumBehindTheBytesAndAcceptsIt(String bytes, String checksum) {
        // given: the published bytes as kind, seq and payload
        byte[] plain = hex(bytes);
        byte[] out = new byte[FrameEncoder.LONGEST_FRAME];

        int end = new FrameEncoder().raw(out, 0, plain[0], plain[1], Arrays.copyOfRange(plain, 2, plain.length));

        byte[] coded = Arrays.copyOf(out, end);
        int body = Cobs.decode(out, end - 1);
        assertArrayEquals(hex(checksum), Arrays.copyOfRange(out, body - 4, body));
        assertRejectedAfterTheChecksum(coded);
    }

    private static void assertRejectedAfterTheChecksum(byte[] coded) {
        String said = FrameText.of(coded).get(0);
        assertEquals(true, said.equals("UNKNOWN_KIND") || said.equals("BAD_LENGTH"), said);
    }

    @Test
    void countsNoEmptyPiece() {
        assertEquals(List.of(), FrameText.of(hex("00 00 00")));
    }

    @Test
    void saysNothingOfAPieceThatNoZeroHasEnded() {
        assertEquals(List.of(), FrameText.of(hex("01 02 03")));
    }

    @Test
    void forgetsThePieceBegunWhenReset() {
        FrameText text = new FrameText();
        FrameDecoder decoder = new FrameDecoder();
        decoder.feed(hex("05 01 02"), 0, 3, text);
        decoder.reset();
        decoder.feed(WireVectorsTest.INPUT, 0, WireVectorsTest.INPUT.length, text);

        assertEquals(List.of(WireVectorsTest.READ.get(4)), text.lines);
    }

    @Test
    void takesAFrameOf254BytesInBothEncodingsAndRefusesALongerPiece() {
        byte[] payload = new byte[248];
        Arrays.fill(payload, (byte) 7);
        byte[] longest = frame(KIND_TENSION, payload);
        // the checksum of this payload holds no zero, so the encoding is one full group
        assertEquals(256, longest.length);
        byte[] needless = WireVectorsTest.join(Arrays.copyOf(longest, 255), hex("01 00"));
        byte[] longer = WireVectorsTest.join(Arrays.copyOf(longest, 255), hex("02 07 00"));

        assertRejected(FrameFault.BAD_LENGTH, longest);
        assertRejected(FrameFault.BAD_LENGTH, needless);
        assertRejected(FrameFault.TOO_LONG, longer);
    }

    @Test
    void refusesAnEndlessPieceOnce() {
        byte[] noise = new byte[100_000];
        Arrays.fill(noise, (byte) 0xff);
        FrameText text = new FrameText();
        FrameDecoder decoder = new FrameDecoder();
        decoder.feed(noise, 0, noise.length, text);
        assertEquals(List.of(), text.lines);
        decoder.feed(WireVectorsTest.join(hex("00"), WireVectorsTest.INPUT), 0, 1 + WireVectorsTest.INPUT.length, text);

        assertEquals(List.of("TOO_LONG", WireVectorsTest.READ.get(4)), text.lines);
    }

    @Test
    void namesTheFirstTestThatFailsInTheOrderOfTheConstants() {
        byte[] longAndBadlyCoded = new byte[301];
        Arrays.fill(longAndBadlyCoded, 0, 300, (byte) 0xfe);
        assertRejected(FrameFault.TOO_LONG, longAndBadlyCoded);
        assertRejected(FrameFault.BAD_COBS, hex("09 01 02 00"));
        assertRejected(FrameFault.TOO_SHORT, hex("06 01 02 03 04 05 00"));
        assertRejected(FrameFault.BAD_CRC, hex("07 01 02 03 04 05 06 00"));
        assertRejected(FrameFault.UNKNOWN_KIND, frame(0x06, new byte[0]));
        assertRejected(FrameFault.BAD_LENGTH, frame(0x01, new byte[32]));
        assertRejected(FrameFault.UNSUPPORTED_VERSION, frame(0x01, hello(0, "02 00 00 ff")));
        assertRejected(FrameFault.BAD_VALUE, frame(0x01, hello(3, "ff")));
    }

    @ParameterizedTest
    @CsvSource({"2, 9", "2, 11", "3, 8", "3, 10", "4, 11", "4, 13", "5, 6", "5, 8"})
    void refusesAPayloadWhoseLengthDoesNotFitItsKind(int kind, int length) {
        byte[] payload = new byte[length];
        assertRejected(FrameFault.BAD_LENGTH, frame(kind, payload));
    }

    @Test
    void refusesNumbersOfSamplesAndPulsesOutOfRange() {
        assertRejected(FrameFault.BAD_VALUE, frame(KIND_TENSION, new byte[10]));
        byte[] tooManyCounts = new byte[10 + 3 * 79];
        tooManyCounts[9] = 79;
        assertRejected(FrameFault.BAD_VALUE, frame(KIND_TENSION, tooManyCounts));
        byte[] tooManyAges = new byte[9 + 3 * 61];
        tooManyAges[8] = 61;
        assertRejected(FrameFault.BAD_VALUE, frame(KIND_SHAFT, tooManyAges));
    }

    @Test
    void refusesPulsesThatAreNotOldestFirst() {
        assertRejected(FrameFault.BAD_VALUE, frame(KIND_SHAFT, hex("00000000 05000000 02 010000 020000")));
    }

    /** Where each field stands in the payload: the table of {@code firmware-notes/wire.md}. */
    @ParameterizedTest(name = "{2}")
    @CsvSource({
        "19, e7 03 00 00, tick_hz 999",
        "19, 01 09 3d 00, tick_hz 4000001",
        "19, ff ff ff ff, tick_hz 4294967295",
        "23, e7 03 00 00, 0.999 Hz",
        "23, 01 09 3d 00, 4000.001 Hz",
        "27, 00 00 00 00, full scale 0",
        "27, ff ff ff ff, full scale -1",
        "3, 54 00 2d 30 30 30 31 00, a zero inside the id",
        "3, 54 4c 0a 30 30 30 31 00, a line feed in the id"
    })
    void refusesAHelloWithAValueOutOfRange(int at, String bytes, String what) {
        assertRejected(FrameFault.BAD_VALUE, frame(0x01, hello(at, bytes)));
    }

    @ParameterizedTest(name = "{2}")
    @CsvSource({
        "19, e8 03 00 00, tick_hz 1000",
        "19, 00 09 3d 00, tick_hz 4000000",
        "23, e8 03 00 00, 1 Hz",
        "23, 00 09 3d 00, 4 kHz",
        "27, 01 00 00 00, full scale 1",
        "3, 00 00 00 00 00 00 00 00, no id",
        "3, 41 42 43 44 45 46 47 48, an id of 8"
    })
    void takesAHelloAtTheEdgesOfTheRanges(int at, String bytes, String what) {
        String said = FrameText.of(frame(0x01, hello(at, bytes))).get(0);
        assertEquals("hello", said.substring(0, 5));
    }

    @Test
    void ignoresWhatALongerHelloAdds() {
        byte[] longer = Arrays.copyOf(hello(0, "01"), 60);
        assertEquals(
                "hello 9 " + WireVectorsTest.INSTRUMENT + " at 999000",
                FrameText.of(frame(0x01, longer)).get(0));
    }

    @Test
    void noticesEveryChangeOfAHello() {
        String first = FrameText.of(frame(0x01, hello(11, "07"))).get(0);
        byte[] both = WireVectorsTest.join(frame(0x01, hello(11, "07")), frame(0x01, hello(11, "08")));

        assertEquals(List.of(first, first.replace("boot=7", "boot=8")), FrameText.of(both));
    }

    @Test
    void refusesARangeOutsideTheArray() {
        assertThrows(
                IndexOutOfBoundsException.class, () -> new FrameDecoder().feed(new byte[4], 2, 3, new FrameText()));
    }
}
