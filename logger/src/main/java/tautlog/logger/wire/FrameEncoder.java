package tautlog.logger.wire;

import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32C;
import tautlog.sample.Instrument;

/**
 * Writes frames of both directions, each with its checksum, encoding and the zero that ends it. Source:
 * {@code firmware-notes/wire.md}. Not thread-safe.
 *
 * <p>Every method writes into {@code out} from index {@code at} and returns the index behind the frame; a frame takes at
 * most {@link #LONGEST_FRAME} bytes. {@code seq}, ticks, numbers and pulses are cut to the width that they have on the
 * wire, so 64-bit counters may be given as they are. A value that does not fit its field is an
 * {@link IllegalArgumentException}, and nothing is written.
 */
public final class FrameEncoder {
    /** Bytes of the longest frame, its zero included. */
    public static final int LONGEST_FRAME = FrameKind.GREATEST_BODY + 2;

    private static final int ID_LENGTH = 8;

    private final byte[] body = new byte[FrameKind.GREATEST_BODY];
    private final CRC32C crc = new CRC32C();

    /** @throws IllegalArgumentException if the id is longer than 8 characters or not printable ASCII */
    public int hello(byte[] out, int at, int seq, Instrument instrument, long tick) {
        byte[] id = asciiId(instrument.id());
        int end = head(FrameKind.HELLO, seq);
        end = put(end, FrameKind.VERSION, 1);
        end = put(end, byteRange("firmwareMajor", instrument.firmwareMajor()), 1);
        end = put(end, byteRange("firmwareMinor", instrument.firmwareMinor()), 1);
        for (int i = 0; i < ID_LENGTH; i++) {
            end = put(end, i < id.length ? id[i] : 0, 1);
        }
        end = put(end, instrument.boot(), 4);
        end = put(end, tick, 4);
        end = put(end, instrument.tickHz(), 4);
        end = put(end, instrument.rateMillihertz(), 4);
        end = put(end, instrument.fullScale(), 4);
        end = put(end, instrument.pulsesPerRevolution(), 2);
        return finish(end, out, at);
    }

    /**
     * Writes a TENSION frame of {@code counts[from]} to {@code counts[from + n - 1]}.
     *
     * @param flags bit 0 end stop, bit 1 open bridge, bits 4 to 7 the channel
     * @param n 1 to 78
     */
    public int tension(byte[] out, int at, int seq, long tick, long number, int flags, int[] counts, int from, int n) {
        range("n", n, 1, FrameKind.GREATEST_COUNTS);
        int end = head(FrameKind.TENSION, seq);
        end = put(end, tick, 4);
        end = put(end, number, 4);
        end = put(end, byteRange("flags", flags), 1);
        end = put(end, n, 1);
        for (int i = 0; i < n; i++) {
            end = put(end, range("counts", counts[from + i], -0x80_0000, 0x7f_ffff), 3);
        }
        return finish(end, out, at);
    }

    /**
     * Writes a SHAFT frame.
     *
     * @param ages in ticks before {@code tick}, oldest first, each 0 to 16,777,215
     * @param n 0 to 60
     */
    public int shaft(byte[] out, int at, int seq, long tick, long pulses, int[] ages, int n) {
        range("n", n, 0, FrameKind.GREATEST_AGES);
        int end = head(FrameKind.SHAFT, seq);
        end = put(end, tick, 4);
        end = put(end, pulses, 4);
        end = put(end, n, 1);
        for (int i = 0; i < n; i++) {
            end = put(end, range("ages", ages[i], 0, i == 0 ? 0xff_ffff : ages[i - 1]), 3);
        }
        return finish(end, out, at);
    }

    public int health(
            byte[] out, int at, int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        int end = head(FrameKind.HEALTH, seq);
        end = put(end, tick, 4);
        end = put(end, range("supplyMillivolts", supplyMillivolts, 0, 0xffff), 2);
        end = put(end, range("temperatureDecidegrees", temperatureDecidegrees, Short.MIN_VALUE, Short.MAX_VALUE), 2);
        end = put(end, lost, 4);
        return finish(end, out, at);
    }

    public int input(byte[] out, int at, int seq, long tick, int selector, int present, int state) {
        int end = head(FrameKind.INPUT, seq);
        end = put(end, tick, 4);
        end = put(end, byteRange("selector", selector), 1);
        end = put(end, byteRange("present", present), 1);
        end = put(end, byteRange("state", state), 1);
        return finish(end, out, at);
    }

    public int beacon(byte[] out, int at, int seq, BeaconState state) {
        return finish(put(head(FrameKind.BEACON, seq), state.code(), 1), out, at);
    }

    /** A frame of any kind and payload, right or not. */
    int raw(byte[] out, int at, int kind, int seq, byte[] payload) {
        int end = head(kind, seq);
        System.arraycopy(payload, 0, body, end, payload.length);
        return finish(end + payload.length, out, at);
    }

    private int head(int kind, int seq) {
        return put(put(0, kind, 1), seq, 1);
    }

    private int put(int at, long value, int bytes) {
        return LittleEndian.put(body, at, value, bytes);
    }

    private int finish(int end, byte[] out, int at) {
        crc.reset();
        crc.update(body, 0, end);
        int coded = Cobs.encode(body, put(end, crc.getValue(), FrameKind.CRC), out, at);
        out[coded] = 0;
        return coded + 1;
    }

    private static byte[] asciiId(String id) {
        if (!id.matches("[ -~]{0,8}")) {
            throw new IllegalArgumentException("id must be up to 8 printable ASCII characters, was \"" + id + "\"");
        }
        return id.getBytes(StandardCharsets.US_ASCII);
    }

    private static int byteRange(String name, int value) {
        return range(name, value, 0, 0xff);
    }

    private static int range(String name, int value, int least, int greatest) {
        if (value < least || value > greatest) {
            throw new IllegalArgumentException(name + " must be " + least + " to " + greatest + ", was " + value);
        }
        return value;
    }
}
