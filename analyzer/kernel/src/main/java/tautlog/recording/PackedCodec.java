package tautlog.recording;

import java.util.ArrayList;
import java.util.List;

/**
 * Codes a block of samples for keeping: smaller than {@link SampleCodec}, slower, and read whole. Frames as there; the counts in pieces, of
 * which only what was not foretold is stored. Layout: {@code analyzer/RECORDING.md}, "Packed". Not thread-safe.
 */
final class PackedCodec {
    private static final int LENGTH_BITS = 3;
    private static final int GAIN_BITS = 3;
    private static final int SHIFT_BITS = 5;
    /** How far a base or slope is from the one expected, as {@link BitWriter#number}. */
    private static final int BASE_SCALE = 1;

    private static final int SLOPE_SCALE = 2;

    private final SampleCodec frames;
    private final PieceFinder finder = new PieceFinder();
    private final SymbolStreams streams = new SymbolStreams();
    private final BitWriter heads = new BitWriter();
    private final ByteWriter packed = new ByteWriter();
    private final int[] errors = new int[PieceFinder.LONGEST];
    private final long[] low = new long[PieceFinder.LONGEST];
    private byte[] symbols = new byte[0];

    PackedCodec(SampleCodec frames) {
        this.frames = frames;
    }

    /** Appends the content of a block to {@code out}; the number of its first sample stands in the block's header. */
    void encode(FrameTable table, ByteWriter out) {
        frames.encodeFrames(table, out);
        room(table.samples());
        heads.clear();
        packed.clear();
        int[] often = new int[SymbolCode.SYMBOLS];
        int stored = 0;
        int at = 0;
        Forecast forecast = new Forecast();
        for (Piece piece : finder.find(table.counts, table.samples())) {
            writeHead(piece, forecast);
            forecast.after(piece, piece.errors(table.counts, at, errors));
            if (piece.shift() != Piece.EXACT) {
                stored = split(piece, stored, often);
            }
            at += piece.n();
        }
        out.varint(heads.size());
        heads.finish(out);
        streams.encode(symbols, stored, often, out);
        out.raw(packed.array(), 0, packed.size());
        out.i32(0); // so that eight bytes can be loaded from any byte
    }

    /** What the next piece should begin with: it goes on where the one before ended, as steep as that began. */
    private static final class Forecast {
        private int base;
        private int slope;

        void after(Piece piece, int next) {
            base = next;
            slope = piece.slope();
        }
    }

    private void writeHead(Piece piece, Forecast forecast) {
        int halvings = Integer.numberOfTrailingZeros(PieceFinder.LONGEST)
                - (32 - Integer.numberOfLeadingZeros(Math.max(PieceFinder.SHORTEST, piece.n()) - 1));
        heads.bits(halvings, LENGTH_BITS);
        heads.bits(piece.gain(), GAIN_BITS);
        heads.bits(piece.shift() + 1, SHIFT_BITS);
        heads.number(piece.base() - forecast.base, BASE_SCALE);
        heads.number(piece.slope() - forecast.slope, SLOPE_SCALE);
    }

    /** Splits the errors of a piece into symbols and low bits; how many symbols there are now. */
    private int split(Piece piece, int stored, int[] often) {
        int shift = piece.shift();
        int mask = (1 << shift) - 1;
        for (int i = 0; i < piece.n(); i++) {
            int symbol = (errors[i] >> shift) + SymbolCode.MIDDLE;
            symbols[stored + i] = (byte) symbol;
            often[symbol]++;
            low[i] = errors[i] & mask;
        }
        if (shift > 0) {
            packed.packed(low, 0, piece.n(), 0, shift);
        }
        return stored + piece.n();
    }

    /**
     * Reads all of a block.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content; {@code table} is left half filled
     */
    void decode(ByteReader in, long firstNumber, int samples, FrameTable table) {
        frames.decodeFrames(in, firstNumber, samples, table);
        room(samples);
        List<Piece> pieces = readHeads(in, samples);
        int stored = pieces.stream()
                .filter(piece -> piece.shift() != Piece.EXACT)
                .mapToInt(Piece::n)
                .sum();
        streams.decode(in, stored, symbols);
        restore(pieces, in, table.counts);
        if (in.left() != 4) {
            throw new IndexOutOfBoundsException(in.left() + " bytes after the last piece where 4 belong");
        }
    }

    /** The pieces as they are stored: the base of each less what it was expected to be. */
    private static List<Piece> readHeads(ByteReader in, int samples) {
        int length = in.count(in.left());
        BitReader bits = new BitReader(new ByteReader(in.array(), in.at(), in.at() + length));
        in.skip(length);
        List<Piece> pieces = new ArrayList<>();
        int slope = 0;
        for (int left = samples; left > 0; ) {
            int n = Math.min(left, PieceFinder.LONGEST >> (int) bits.bits(LENGTH_BITS));
            int gain = (int) bits.bits(GAIN_BITS);
            int shift = (int) bits.bits(SHIFT_BITS) - 1;
            if (shift > Piece.GREATEST_SHIFT) {
                throw new IndexOutOfBoundsException("a piece with " + shift + " low bits");
            }
            int base = bits.number(BASE_SCALE);
            slope += bits.number(SLOPE_SCALE);
            pieces.add(new Piece(n, gain, shift, base, slope));
            left -= n;
        }
        return pieces;
    }

    private void restore(List<Piece> pieces, ByteReader in, int[] counts) {
        int at = 0;
        int stored = 0;
        int next = 0;
        for (Piece piece : pieces) {
            if (piece.shift() > 0) {
                int from = in.at();
                in.skip(RunCodec.bytes(piece.n(), piece.shift()));
                RunCodec.unpack(in.array(), from, piece.n(), piece.shift(), 0, counts, at);
            }
            next = piece.from(next).restore(symbols, stored, counts, at);
            stored += piece.shift() == Piece.EXACT ? 0 : piece.n();
            at += piece.n();
        }
    }

    private void room(int samples) {
        if (symbols.length <= samples) {
            symbols = new byte[samples + 1];
        }
    }
}
