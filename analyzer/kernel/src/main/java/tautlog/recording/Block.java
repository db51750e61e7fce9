package tautlog.recording;

import java.util.zip.CRC32C;

/**
 * The frame round a piece of stored content: it says what it is and proves that no byte of it changed.
 *
 * <pre>
 *    0  54 4C 42 01            "TLB", format version 1
 *    4  kind u8                1 start, 2 samples, 3 shaft, 4 events, 5 end, 6 seconds, 7 thinning
 *    5  coding u8              1; samples also 2: thinned, the content is the SHA-256 of what it was; 3: packed for keeping;
 *                            6: full runs in planes;
 *                            all others also 4: deflated for keeping; seconds also 5: column by column
 *    6  0 u16
 *    8  outing u32, span u32   which outing of the file, which span of the outing
 *   16  first i64              samples: number of the first; shaft: tick of the first frame; else 0
 *   24  count u32              samples, shaft frames, events or seconds in it
 *   28  length u32             of the content in bytes
 *   32  content
 *       crc u32                CRC-32C (RFC 3720) over all bytes before it
 * </pre>
 *
 * All numbers little-endian. Page: {@code analyzer/RECORDING.md}, "Blocks".
 *
 * @param bytes from the first byte of the magic to the CRC
 */
@SuppressWarnings("ArrayRecordComponent") // moved about, never compared
record Block(Kind kind, int outing, int span, long first, int count, byte[] bytes) {
    /** Samples in a full block; a frame longer than that stands alone in a longer one. */
    static final int SAMPLES = 16_384;
    /** No count in a block is greater: keeps a damaged count from asking for all memory. */
    static final int GREATEST_COUNT = 1 << 20;
    /**
     * No count of seconds is greater: in columns they can take less than a byte each, and take some hundred once read. Chosen: four times {@link
     * #SAMPLES}, as a second has at least one sample.
     */
    static final int MOST_SECONDS = 1 << 16;

    static final int HEADER = 32;
    static final int MAGIC = 0x01_42_4C_54;
    private static final int CODING = 1;
    private static final int THINNED = 2;
    private static final int PACKED = 3;
    private static final int DEFLATED = 4;
    private static final int COLUMNS = 5;
    private static final int PLANES = 6;
    private static final int CODING_AT = 5;
    private static final int DIGEST = 32;
    private static final int CRC = 4;

    /** What a block holds. */
    enum Kind {
        START(1),
        SAMPLES(2),
        SHAFT(3),
        EVENTS(4),
        END(5),
        SECONDS(6),
        THINNING(7);

        private final int code;

        Kind(int code) {
            this.code = code;
        }

        int code() {
            return code;
        }

        String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        static boolean isKnown(int code) {
            return code >= 1 && code <= values().length;
        }

        static Kind of(int code) throws DamagedBlockException {
            for (Kind kind : values()) {
                if (kind.code == code) {
                    return kind;
                }
            }
            throw new DamagedBlockException("its kind is " + code + ", 1 to " + values().length + " are known");
        }
    }

    static Block of(Kind kind, int outing, int span, long first, int count, ByteWriter content) {
        return of(kind, CODING, outing, span, first, count, content);
    }

    /** A block of samples; {@code isInPlanes}: whose full runs stand in {@link Planes}. */
    static Block ofSamples(boolean isInPlanes, int outing, int span, long first, int count, ByteWriter content) {
        return of(Kind.SAMPLES, isInPlanes ? PLANES : CODING, outing, span, first, count, content);
    }

    /** A block of seconds that are coded column by column. */
    static Block ofColumns(int outing, int span, int count, ByteWriter content) {
        return of(Kind.SECONDS, COLUMNS, outing, span, 0, count, content);
    }

    /** This block of samples with nothing left of its content but {@code digest}, the SHA-256 of what it meant. */
    Block thinned(byte[] digest) {
        ByteWriter content = new ByteWriter();
        content.raw(digest, 0, DIGEST);
        return of(kind, THINNED, outing, span, first, count, content);
    }

    /** This block of samples coded for keeping, as {@code content}. */
    Block packed(ByteWriter content) {
        return of(kind, PACKED, outing, span, first, count, content);
    }

    /** This block with its content deflated; itself when that is no smaller. */
    Block deflated() {
        int length = bytes.length - HEADER - CRC;
        if (bytes[CODING_AT] != CODING || length > Deflated.MOST) {
            return this;
        }
        ByteWriter content = new ByteWriter();
        Deflated.write(bytes, HEADER, length, content);
        return content.size() < length ? of(kind, DEFLATED, outing, span, first, count, content) : this;
    }

    private static Block of(Kind kind, int coding, int outing, int span, long first, int count, ByteWriter content) {
        ByteWriter out = new ByteWriter();
        out.i32(MAGIC);
        out.u8(kind.code());
        out.u8(coding);
        out.u16(0);
        out.i32(outing);
        out.i32(span);
        out.i64(first);
        out.i32(count);
        out.i32(content.size());
        out.raw(content.array(), 0, content.size());
        out.i32(crc(out.array(), 0, out.size()));
        return new Block(kind, outing, span, first, count, out.toBytes());
    }

    /** Reads the block at the start of {@code bytes}, which may go on after it. */
    static Block read(byte[] bytes, int at) throws DamagedBlockException {
        int left = bytes.length - at;
        if (left < HEADER + CRC) {
            throw new DamagedBlockException("only " + left + " bytes of it are there");
        }
        ByteReader in = new ByteReader(bytes, at, bytes.length);
        if (in.i32() != MAGIC) {
            throw new DamagedBlockException("it does not begin with the mark of a block");
        }
        int kind = in.u8();
        int coding = in.u8();
        in.u16();
        int outing = in.i32();
        int span = in.i32();
        long first = in.i64();
        int count = in.i32();
        int length = in.i32();
        if (length < 0 || length > left - HEADER - CRC) {
            throw new DamagedBlockException("its length is " + length + ", " + (left - HEADER - CRC) + " are there");
        }
        in.skip(length);
        if (in.i32() != crc(bytes, at, HEADER + length)) {
            throw new DamagedBlockException("its checksum (CRC-32C) does not fit");
        }
        boolean isThinned = coding == THINNED && kind == Kind.SAMPLES.code && length == DIGEST;
        boolean isSamples = (coding == PACKED || coding == PLANES) && kind == Kind.SAMPLES.code;
        boolean isDeflated = coding == DEFLATED && kind != Kind.SAMPLES.code;
        boolean isInColumns = coding == COLUMNS && kind == Kind.SECONDS.code;
        int most = kind == Kind.SECONDS.code ? MOST_SECONDS : GREATEST_COUNT;
        if (!(coding == CODING || isThinned || isSamples || isDeflated || isInColumns) || count < 0 || count > most) {
            throw new DamagedBlockException("it is coded as " + coding + " with " + count + " entries");
        }
        byte[] own = at == 0 && length + HEADER + CRC == left
                ? bytes
                : java.util.Arrays.copyOfRange(bytes, at, at + HEADER + length + CRC);
        return new Block(Kind.of(kind), outing, span, first, count, own);
    }

    /** True when its readings were taken out and only {@link #digest} is left of them. */
    boolean isThinned() {
        return bytes[CODING_AT] == THINNED;
    }

    /** True when its samples are coded by {@link PackedCodec}. */
    boolean isPacked() {
        return bytes[CODING_AT] == PACKED;
    }

    /** True when its full runs stand in {@link Planes}. */
    boolean isInPlanes() {
        return bytes[CODING_AT] == PLANES;
    }

    /** True when its seconds are coded by {@link SecondColumns}. */
    boolean isInColumns() {
        return bytes[CODING_AT] == COLUMNS;
    }

    /** Of a thinned block: the SHA-256 of the canonical content that it had. */
    byte[] digest() {
        return java.util.Arrays.copyOfRange(bytes, HEADER, HEADER + DIGEST);
    }

    int size() {
        return bytes.length;
    }

    /** @throws IndexOutOfBoundsException if it is deflated and cannot be inflated */
    ByteReader content() {
        ByteReader content = new ByteReader(bytes, HEADER, bytes.length - CRC);
        return bytes[CODING_AT] == DEFLATED ? Deflated.read(content) : content;
    }

    private static int crc(byte[] bytes, int from, int length) {
        CRC32C crc = new CRC32C();
        crc.update(bytes, from, length);
        return (int) crc.getValue();
    }
}
