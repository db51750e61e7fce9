package tautlog.logger.wire;

import java.util.zip.CRC32C;

/**
 * Finds pieces between zeros and opens those whose encoding, size and checksum are right; what they say is left to the
 * two directions.
 */
abstract class FrameReader<S extends FaultSink> {
    /** The longest encoding of 254 bytes, written with the needless last length byte. */
    private static final int LONGEST_PIECE = FrameKind.GREATEST_BODY + 2;

    private final byte[] piece = new byte[LONGEST_PIECE];
    private final CRC32C crc = new CRC32C();
    /** Of the piece begun; stands at LONGEST_PIECE + 1 when it is longer than that. */
    private int length;

    /**
     * Takes the next bytes of the line. Splitting them otherwise changes nothing.
     *
     * @param bytes not modified
     * @param from index of the first
     * @param n how many
     * @param sink told of every frame and every rejected piece, in order
     * @throws IndexOutOfBoundsException if the range does not lie in {@code bytes}
     */
    public final void feed(byte[] bytes, int from, int n, S sink) {
        java.util.Objects.checkFromIndexSize(from, n, bytes.length);
        int end = from + n;
        int begin = from;
        for (int i = from; i < end; i++) {
            if (bytes[i] == 0) {
                keep(bytes, begin, i - begin);
                begin = i + 1;
                close(sink);
            }
        }
        keep(bytes, begin, end - begin);
    }

    /** Forgets the piece begun, because the line was opened anew. */
    public final void reset() {
        length = 0;
    }

    private void keep(byte[] bytes, int from, int n) {
        if (n > LONGEST_PIECE - length) {
            length = LONGEST_PIECE + 1;
            return;
        }
        System.arraycopy(bytes, from, piece, length, n);
        length += n;
    }

    private void close(S sink) {
        int n = length;
        length = 0;
        if (n == 0) {
            return;
        }
        if (isTooLong(n)) {
            sink.rejected(FrameFault.TOO_LONG);
            return;
        }
        int body = Cobs.decode(piece, n);
        if (body == Cobs.BAD) {
            sink.rejected(FrameFault.BAD_COBS);
        } else if (body < FrameKind.LEAST_BODY) {
            sink.rejected(FrameFault.TOO_SHORT);
        } else if (!isIntact(body)) {
            sink.rejected(FrameFault.BAD_CRC);
        } else {
            frame(piece, body - FrameKind.CRC - FrameKind.HEAD, sink);
        }
    }

    /** 256 bytes encode 254 only as a full group and the needless last length byte. */
    private boolean isTooLong(int n) {
        boolean isFullGroup = n == LONGEST_PIECE && piece[0] == (byte) 0xff && piece[n - 1] == 1;
        return n >= LONGEST_PIECE && !isFullGroup;
    }

    private boolean isIntact(int body) {
        int covered = body - FrameKind.CRC;
        crc.reset();
        crc.update(piece, 0, covered);
        return crc.getValue() == LittleEndian.u32(piece, covered);
    }

    /**
     * Reads an intact frame.
     *
     * @param frame kind, seq and payload from index 0; may be changed
     * @param payload its payload's length
     */
    abstract void frame(byte[] frame, int payload, S sink);
}
