package tautlog.logger.wire;

import static tautlog.logger.wire.LittleEndian.i16;
import static tautlog.logger.wire.LittleEndian.i24;
import static tautlog.logger.wire.LittleEndian.u16;
import static tautlog.logger.wire.LittleEndian.u24;
import static tautlog.logger.wire.LittleEndian.u32;
import static tautlog.logger.wire.LittleEndian.u8;

/**
 * Finds an instrument's frames in a stream of bytes. Source: {@code firmware-notes/wire.md}. Not thread-safe.
 *
 * <p>Every piece between two zeros that is not empty leads to exactly one call of the sink: its frame, or the first
 * test that it failed. No bytes make it throw; nothing is allocated per frame, except when a HELLO says something new.
 */
public final class FrameDecoder extends FrameReader<FrameSink> {
    private static final int PAYLOAD = FrameKind.HEAD;

    private final int[] values = new int[FrameKind.GREATEST_COUNTS];
    private final HelloReader hello = new HelloReader();

    @Override
    void frame(byte[] frame, int payload, FrameSink sink) {
        int seq = u8(frame, 1);
        switch (u8(frame, 0)) {
            case FrameKind.HELLO -> hello.read(frame, payload, seq, sink);
            case FrameKind.TENSION -> tension(frame, payload, seq, sink);
            case FrameKind.SHAFT -> shaft(frame, payload, seq, sink);
            case FrameKind.HEALTH -> health(frame, payload, seq, sink);
            case FrameKind.INPUT -> input(frame, payload, seq, sink);
            default -> sink.rejected(FrameFault.UNKNOWN_KIND);
        }
    }

    private void tension(byte[] f, int payload, int seq, FrameSink sink) {
        int fixed = FrameKind.TENSION_PAYLOAD;
        if (payload < fixed || payload != fixed + 3 * u8(f, PAYLOAD + fixed - 1)) {
            sink.rejected(FrameFault.BAD_LENGTH);
            return;
        }
        int n = u8(f, PAYLOAD + 9);
        if (n < 1 || n > FrameKind.GREATEST_COUNTS) {
            sink.rejected(FrameFault.BAD_VALUE);
            return;
        }
        for (int i = 0; i < n; i++) {
            values[i] = i24(f, PAYLOAD + fixed + 3 * i);
        }
        sink.tension(seq, u32(f, PAYLOAD), u32(f, PAYLOAD + 4), u8(f, PAYLOAD + 8), values, n);
    }

    private void shaft(byte[] f, int payload, int seq, FrameSink sink) {
        int fixed = FrameKind.SHAFT_PAYLOAD;
        if (payload < fixed || payload != fixed + 3 * u8(f, PAYLOAD + fixed - 1)) {
            sink.rejected(FrameFault.BAD_LENGTH);
            return;
        }
        int n = u8(f, PAYLOAD + 8);
        if (n > FrameKind.GREATEST_AGES || !readAges(f, n)) {
            sink.rejected(FrameFault.BAD_VALUE);
            return;
        }
        sink.shaft(seq, u32(f, PAYLOAD), u32(f, PAYLOAD + 4), values, n);
    }

    /** False when a pulse is older than the one before it. */
    private boolean readAges(byte[] f, int n) {
        for (int i = 0; i < n; i++) {
            values[i] = u24(f, PAYLOAD + FrameKind.SHAFT_PAYLOAD + 3 * i);
            if (i > 0 && values[i] > values[i - 1]) {
                return false;
            }
        }
        return true;
    }

    private static void health(byte[] f, int payload, int seq, FrameSink sink) {
        if (payload != FrameKind.HEALTH_PAYLOAD) {
            sink.rejected(FrameFault.BAD_LENGTH);
            return;
        }
        sink.health(seq, u32(f, PAYLOAD), u16(f, PAYLOAD + 4), i16(f, PAYLOAD + 6), u32(f, PAYLOAD + 8));
    }

    private static void input(byte[] f, int payload, int seq, FrameSink sink) {
        if (payload != FrameKind.INPUT_PAYLOAD) {
            sink.rejected(FrameFault.BAD_LENGTH);
            return;
        }
        sink.input(seq, u32(f, PAYLOAD), u8(f, PAYLOAD + 4), u8(f, PAYLOAD + 5), u8(f, PAYLOAD + 6));
    }
}
