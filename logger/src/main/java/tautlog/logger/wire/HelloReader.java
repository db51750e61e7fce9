package tautlog.logger.wire;

import static tautlog.logger.wire.LittleEndian.i32;
import static tautlog.logger.wire.LittleEndian.u16;
import static tautlog.logger.wire.LittleEndian.u32;
import static tautlog.logger.wire.LittleEndian.u8;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import tautlog.sample.Instrument;

/** Reads HELLO frames; the one instrument is made anew only when what it says has changed. */
final class HelloReader {
    private static final int VERSION = FrameKind.HEAD;
    private static final int FIRMWARE = VERSION + 1;
    private static final int ID = VERSION + 3;
    private static final int ID_LENGTH = 8;
    private static final int BOOT = ID + ID_LENGTH;
    private static final int TICK = BOOT + 4;
    private static final int TICK_HZ = TICK + 4;
    private static final int RATE = TICK_HZ + 4;
    private static final int FULL_SCALE = RATE + 4;
    private static final int PULSES = FULL_SCALE + 4;
    private static final int END = PULSES + 2;

    private final byte[] last = new byte[END];
    private Instrument instrument = new Instrument("", 0, 0, 0, 1_000, 1_000, 1, 0);

    void read(byte[] f, int payload, int seq, FrameSink sink) {
        if (payload < FrameKind.HELLO_PAYLOAD) {
            sink.rejected(FrameFault.BAD_LENGTH);
        } else if (u8(f, VERSION) != FrameKind.VERSION) {
            sink.rejected(FrameFault.UNSUPPORTED_VERSION);
        } else if (!isInRange(f)) {
            sink.rejected(FrameFault.BAD_VALUE);
        } else {
            sink.hello(seq, instrument(f), u32(f, TICK));
        }
    }

    private static boolean isInRange(byte[] f) {
        return isBetween(u32(f, TICK_HZ), 1_000, 4_000_000)
                && isBetween(u32(f, RATE), 1_000, 4_000_000)
                && i32(f, FULL_SCALE) > 0
                && isPadded(f, idLength(f));
    }

    private static boolean isBetween(long value, long least, long greatest) {
        return value >= least && value <= greatest;
    }

    /** Printable ASCII from the first byte on. */
    private static int idLength(byte[] f) {
        int n = 0;
        while (n < ID_LENGTH && f[ID + n] >= ' ' && f[ID + n] <= '~') {
            n++;
        }
        return n;
    }

    private static boolean isPadded(byte[] f, int length) {
        for (int i = length; i < ID_LENGTH; i++) {
            if (f[ID + i] != 0) {
                return false;
            }
        }
        return true;
    }

    private Instrument instrument(byte[] f) {
        if (Arrays.equals(f, VERSION, TICK, last, VERSION, TICK)
                && Arrays.equals(f, TICK_HZ, END, last, TICK_HZ, END)) {
            return instrument;
        }
        instrument = new Instrument(
                new String(f, ID, idLength(f), StandardCharsets.US_ASCII),
                u8(f, FIRMWARE),
                u8(f, FIRMWARE + 1),
                u32(f, BOOT),
                u32(f, TICK_HZ),
                u32(f, RATE),
                i32(f, FULL_SCALE),
                u16(f, PULSES));
        System.arraycopy(f, 0, last, 0, END);
        return instrument;
    }
}
