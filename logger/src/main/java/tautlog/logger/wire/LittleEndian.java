package tautlog.logger.wire;

/** Whole numbers in byte arrays, least byte first. */
final class LittleEndian {
    private LittleEndian() {}

    static int u8(byte[] b, int at) {
        return b[at] & 0xff;
    }

    static int u16(byte[] b, int at) {
        return u8(b, at) | u8(b, at + 1) << 8;
    }

    static int i16(byte[] b, int at) {
        return (short) u16(b, at);
    }

    static int u24(byte[] b, int at) {
        return u16(b, at) | u8(b, at + 2) << 16;
    }

    static int i24(byte[] b, int at) {
        return u16(b, at) | b[at + 2] << 16;
    }

    static int i32(byte[] b, int at) {
        return u16(b, at) | u16(b, at + 2) << 16;
    }

    static long u32(byte[] b, int at) {
        return i32(b, at) & 0xffff_ffffL;
    }

    /** Writes the {@code bytes} low bytes of {@code value}; returns the index behind them. */
    static int put(byte[] b, int at, long value, int bytes) {
        for (int i = 0; i < bytes; i++) {
            b[at + i] = (byte) (value >>> (8 * i));
        }
        return at + bytes;
    }
}
