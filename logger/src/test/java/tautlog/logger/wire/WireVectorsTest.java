package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.sample.Instrument;

/** The vectors of {@code firmware-notes/wire.md}, byte for byte, in both directions. */
class WireVectorsTest {
    static final byte[] HELLO = hex("02 01 03 01 01 08 54 4c 2d 30 30 30 31 02 07 01 01 04 58 3e 0f 04 40 42 0f"
            + " 04 20 a1 07 04 ff ff 7f 02 06 05 9f 44 b4 ee 00");
    static final byte[] TENSION = hex(
            "06 02 01 40 42 0f 03 f4 01 01 01 02 05 01 01 02 01 01 07 ff ff ff ff ff 7f 01" + " 06 80 28 a4 a5 e0 00");
    static final byte[] SHAFT = hex("06 03 02 34 44 0f 03 18 15 01 04 03 a0 92 03 4a 4a 03 f4 01 05 27 b3 13 71 00");
    static final byte[] HEALTH = hex("06 04 03 98 44 0f 05 7b 13 83 ff 01 01 01 05 94 ff 72 92 00");
    static final byte[] INPUT = hex("06 05 04 fc 44 0f 08 02 07 02 54 34 c4 70 00");
    static final byte[] BEACON = hex("02 81 06 02 b0 36 39 af 00");
    static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);
    static final List<String> READ = List.of(
            "hello 0 " + INSTRUMENT + " at 999000",
            "tension 1 tick 1000000 number 500 flags 0 [0, 1, -1, 8388607, -8388608]",
            "shaft 2 tick 1000500 pulses 5400 [37536, 19018, 500]",
            "health 3 tick 1000600 4987 mV -125 dC lost 0",
            "input 4 tick 1000700 selector 2 present 7 state 2");

    private final byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
    private final FrameEncoder encoder = new FrameEncoder();

    static byte[] hex(String text) {
        return HexFormat.of().parseHex(text.replace(" ", ""));
    }

    static byte[] join(byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return all.toByteArray();
    }

    @Test
    void encodesEveryVectorByteForByte() {
        assertWritten(HELLO, encoder.hello(out, 0, 0, INSTRUMENT, 999_000));
        int[] counts = {0, 1, -1, 8_388_607, -8_388_608};
        assertWritten(TENSION, encoder.tension(out, 0, 1, 1_000_000, 500, 0, counts, 0, 5));
        assertWritten(SHAFT, encoder.shaft(out, 0, 2, 1_000_500, 5_400, new int[] {37_536, 19_018, 500}, 3));
        assertWritten(HEALTH, encoder.health(out, 0, 3, 1_000_600, 4_987, -125, 0));
        assertWritten(INPUT, encoder.input(out, 0, 4, 1_000_700, 2, 0b111, 0b010));
        assertWritten(BEACON, encoder.beacon(out, 0, 0, BeaconState.OVER));
    }

    private void assertWritten(byte[] vector, int end) {
        assertArrayEquals(vector, Arrays.copyOf(out, end));
    }

    @Test
    void decodesEveryVector() {
        assertEquals(READ, FrameText.of(join(HELLO, TENSION, SHAFT, HEALTH, INPUT)));
    }

    @Test
    void decodesTheSameAtEverySplitPoint() {
        byte[] all = join(HELLO, TENSION, SHAFT, HEALTH, INPUT);
        for (int split = 0; split <= all.length; split++) {
            FrameText text = new FrameText();
            FrameDecoder decoder = new FrameDecoder();
            decoder.feed(all, 0, split, text);
            decoder.feed(all, split, all.length - split, text);
            assertEquals(READ, text.lines, "split at " + split);
        }
    }

    @Test
    void decodesTheSameByteByByte() {
        byte[] all = join(HELLO, TENSION, SHAFT, HEALTH, INPUT);
        FrameText text = new FrameText();
        FrameDecoder decoder = new FrameDecoder();
        for (int i = 0; i < all.length; i++) {
            decoder.feed(all, i, 1, text);
        }
        assertEquals(READ, text.lines);
    }

    @Test
    void readsTheBeaconInItsOwnDirectionOnly() {
        List<String> heard = new ArrayList<>();
        BeaconSink sink = new BeaconSink() {
            @Override
            public void beacon(int seq, BeaconState state) {
                heard.add(seq + " " + state);
            }

            @Override
            public void rejected(FrameFault fault) {
                heard.add(fault.name());
            }
        };

        new BeaconDecoder().feed(join(BEACON, TENSION), 0, BEACON.length + TENSION.length, sink);

        assertEquals(List.of("0 OVER", "UNKNOWN_KIND"), heard);
        assertEquals(List.of("UNKNOWN_KIND"), FrameText.of(BEACON));
    }
}
