package tautlog.logger.wire;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tautlog.sample.Instrument;

/**
 * The slow and obvious reader of {@code firmware-notes/wire.md}, written from that page alone: cuts at zeros, reads each
 * piece by itself, works the checksum out bit by bit. Gives the lines of {@link FrameText}.
 */
final class PlainReader {
    private PlainReader() {}

    static List<String> read(byte[] stream) {
        List<String> lines = new ArrayList<>();
        for (byte[] piece : pieces(stream)) {
            lines.add(readPiece(piece));
        }
        return lines;
    }

    /** The pieces that a zero ends, empty ones left out. */
    static List<byte[]> pieces(byte[] stream) {
        List<byte[]> pieces = new ArrayList<>();
        int begin = 0;
        for (int i = 0; i < stream.length; i++) {
            if (stream[i] == 0) {
                if (i > begin) {
                    pieces.add(Arrays.copyOfRange(stream, begin, i));
                }
                begin = i + 1;
            }
        }
        return pieces;
    }

    private static String readPiece(byte[] piece) {
        boolean isFullGroup = piece.length == 256 && piece[0] == -1 && piece[255] == 1;
        if (piece.length > 255 && !isFullGroup) {
            return "TOO_LONG";
        }
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        for (int at = 0; at < piece.length; ) {
            int length = Byte.toUnsignedInt(piece[at]);
            if (at + length > piece.length) {
                return "BAD_COBS";
            }
            plain.write(piece, at + 1, length - 1);
            at += length;
            if (length < 255 && at < piece.length) {
                plain.write(0);
            }
        }
        return readBody(plain.toByteArray());
    }

    private static String readBody(byte[] body) {
        if (body.length < 6) {
            return "TOO_SHORT";
        }
        ByteBuffer b = ByteBuffer.wrap(body).order(ByteOrder.LITTLE_ENDIAN);
        byte[] covered = Arrays.copyOf(body, body.length - 4);
        if (b.getInt(body.length - 4) != crc32c(covered)) {
            return "BAD_CRC";
        }
        int kind = b.get();
        int seq = u8(b);
        ByteBuffer payload = b.slice(2, body.length - 6).order(ByteOrder.LITTLE_ENDIAN);
        return switch (kind) {
            case 1 -> hello(seq, payload);
            case 2 -> tension(seq, payload);
            case 3 -> shaft(seq, payload);
            case 4 -> health(seq, payload);
            case 5 -> input(seq, payload);
            default -> "UNKNOWN_KIND";
        };
    }

    /** CRC-32C: polynomial 0x1EDC6F41 reflected, all ones before and after. */
    static int crc32c(byte[] bytes) {
        int crc = -1;
        for (byte one : bytes) {
            crc ^= Byte.toUnsignedInt(one);
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) != 0 ? (crc >>> 1) ^ 0x82F63B78 : crc >>> 1;
            }
        }
        return ~crc;
    }

    private static String hello(int seq, ByteBuffer b) {
        if (b.remaining() < 33) {
            return "BAD_LENGTH";
        }
        if (b.get() != 1) {
            return "UNSUPPORTED_VERSION";
        }
        int major = u8(b);
        int minor = u8(b);
        byte[] idBytes = new byte[8];
        b.get(idBytes);
        String id = new String(idBytes, StandardCharsets.ISO_8859_1).replaceAll("\0+$", "");
        long boot = u32(b);
        long tick = u32(b);
        long tickHz = u32(b);
        long rate = u32(b);
        int fullScale = b.getInt();
        int pulses = Short.toUnsignedInt(b.getShort());
        boolean isGood = id.matches("[\\x20-\\x7e]*")
                && tickHz >= 1_000
                && tickHz <= 4_000_000
                && rate >= 1_000
                && rate <= 4_000_000
                && fullScale > 0;
        return isGood
                ? "hello " + seq + " " + new Instrument(id, major, minor, boot, tickHz, rate, fullScale, pulses)
                        + " at " + tick
                : "BAD_VALUE";
    }

    private static String tension(int seq, ByteBuffer b) {
        if (b.remaining() < 10 || b.remaining() != 10 + 3 * Byte.toUnsignedInt(b.get(9))) {
            return "BAD_LENGTH";
        }
        long tick = u32(b);
        long number = u32(b);
        int flags = u8(b);
        int n = u8(b);
        List<Integer> counts = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            counts.add(u24(b) << 8 >> 8);
        }
        return n < 1 || n > 78
                ? "BAD_VALUE"
                : "tension " + seq + " tick " + tick + " number " + number + " flags " + flags + " " + counts;
    }

    private static String shaft(int seq, ByteBuffer b) {
        if (b.remaining() < 9 || b.remaining() != 9 + 3 * Byte.toUnsignedInt(b.get(8))) {
            return "BAD_LENGTH";
        }
        long tick = u32(b);
        long pulses = u32(b);
        int n = u8(b);
        List<Integer> ages = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            ages.add(u24(b));
        }
        List<Integer> oldestFirst = new ArrayList<>(ages);
        oldestFirst.sort(java.util.Comparator.reverseOrder());
        return n > 60 || !ages.equals(oldestFirst)
                ? "BAD_VALUE"
                : "shaft " + seq + " tick " + tick + " pulses " + pulses + " " + ages;
    }

    private static String health(int seq, ByteBuffer b) {
        if (b.remaining() != 12) {
            return "BAD_LENGTH";
        }
        return "health " + seq + " tick " + u32(b) + " " + Short.toUnsignedInt(b.getShort()) + " mV " + b.getShort()
                + " dC lost " + u32(b);
    }

    private static String input(int seq, ByteBuffer b) {
        if (b.remaining() != 7) {
            return "BAD_LENGTH";
        }
        return "input " + seq + " tick " + u32(b) + " selector " + u8(b) + " present " + u8(b) + " state " + u8(b);
    }

    private static int u8(ByteBuffer b) {
        return Byte.toUnsignedInt(b.get());
    }

    private static int u24(ByteBuffer b) {
        return u8(b) | u8(b) << 8 | u8(b) << 16;
    }

    private static long u32(ByteBuffer b) {
        return Integer.toUnsignedLong(b.getInt());
    }
}
