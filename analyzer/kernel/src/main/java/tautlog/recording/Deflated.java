package tautlog.recording;

import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** The content of a block that is no samples, for keeping: its length (varint), then a stream of RFC 1951, no wrapper round it. */
final class Deflated {
    /** Longer content is not deflated: keeps a damaged length from asking for all memory. Chosen: far above any block. */
    static final int MOST = 1 << 24;

    private static final boolean NO_WRAPPER = true;

    private Deflated() {}

    /** @param length of the content, at most {@link #MOST} */
    static void write(byte[] bytes, int from, int length, ByteWriter out) {
        out.varint(length);
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, NO_WRAPPER);
        try {
            deflater.setInput(bytes, from, length);
            deflater.finish();
            byte[] part = new byte[8_192];
            while (!deflater.finished()) {
                out.raw(part, 0, deflater.deflate(part));
            }
        } finally {
            deflater.end();
        }
    }

    /** @throws IndexOutOfBoundsException if the bytes are not what {@link #write} writes */
    static ByteReader read(ByteReader in) {
        int length = in.count(MOST);
        Inflater inflater = new Inflater(NO_WRAPPER);
        try {
            inflater.setInput(in.array(), in.at(), in.left());
            byte[] content = inflate(inflater, length);
            if (inflater.getRemaining() > 0) {
                throw new IndexOutOfBoundsException(inflater.getRemaining() + " bytes after the deflated content");
            }
            return new ByteReader(content, 0, content.length);
        } catch (DataFormatException e) {
            throw new IndexOutOfBoundsException("deflated content that cannot be read: " + e.getMessage());
        } finally {
            inflater.end();
        }
    }

    /** Takes room as content comes, not as the length says. */
    private static byte[] inflate(Inflater inflater, int length) throws DataFormatException {
        byte[] content = new byte[Math.min(length, 1 << 16) + 1];
        int filled = 0;
        while (!inflater.finished() && filled <= length) {
            if (filled == content.length) {
                content = Arrays.copyOf(content, Math.min(2 * filled, length + 1));
            }
            int more = inflater.inflate(content, filled, content.length - filled);
            if (more == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                throw new IndexOutOfBoundsException("deflated content that ends after " + filled + " bytes");
            }
            filled += more;
        }
        if (filled != length) {
            throw new IndexOutOfBoundsException("deflated content of another length than " + length);
        }
        return Arrays.copyOf(content, filled);
    }
}
