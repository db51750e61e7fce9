package tautlog.recording.pages;

/** Reads SQLite's numbers of one to nine bytes one after the other: seven bits a byte, most significant first, eight in a ninth. */
final class Varint {
    private final byte[] bytes;
    private final int end;
    private int at;

    /** @param end reading at or behind it is refused */
    Varint(byte[] bytes, int at, int end) {
        this.bytes = bytes;
        this.at = at;
        this.end = end;
    }

    int at() {
        return at;
    }

    long next() throws NotPlainException {
        long value = 0;
        for (int i = 0; i < 8; i++) {
            int b = nextByte();
            value = value << 7 | (b & 0x7F);
            if (b < 0x80) {
                return value;
            }
        }
        return value << 8 | nextByte();
    }

    private int nextByte() throws NotPlainException {
        NotPlainException.require(at < end, "a number cut off");
        return bytes[at++] & 0xFF;
    }
}
