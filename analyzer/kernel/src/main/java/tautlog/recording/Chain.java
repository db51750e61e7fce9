package tautlog.recording;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * The chain of links: link = SHA-256(previous link ‖ header ‖ SHA-256(canonical decoded content)). The first previous link
 * is 32 zero bytes. Header and canonical content: {@code analyzer/RECORDING.md}, "Chain". They do not depend on how the content
 * is coded nor on how the tail was cut.
 */
final class Chain {
    private static final HexFormat HEX = HexFormat.of();
    /** Bytes that are hashed at once: many blocks of SHA-256, and few enough to lie in the nearest cache still. */
    private static final int FULL = 8_192;

    private byte[] link;
    private final MessageDigest links = sha256();
    private final MessageDigest contents = sha256();
    private final ByteWriter buffer = new ByteWriter();

    Chain() {
        this(new byte[32]);
    }

    Chain(byte[] link) {
        this.link = link.clone();
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** The link of the row added last. */
    byte[] link() {
        return link.clone();
    }

    String hex() {
        return HEX.formatHex(link);
    }

    static String hex(byte[] link) {
        return HEX.formatHex(link);
    }

    Chain copy() {
        return new Chain(link);
    }

    void addSamples(int outing, int span, FrameTable table) {
        add(Block.Kind.SAMPLES, outing, span, table.number[0], table.samples(), digest(table));
    }

    /** A block of which only the digest of its content is left. */
    void addThinned(Block block) {
        add(block.kind(), block.outing(), block.span(), block.first(), block.count(), block.digest());
    }

    /** SHA-256 of the canonical content of samples. */
    byte[] digest(FrameTable table) {
        for (int frame = 0; frame < table.frames; frame++) {
            buffer.i64(table.number[frame]);
            buffer.i64(table.tick[frame]);
            buffer.i32(table.flags[frame]);
            buffer.i32(table.length(frame));
            buffer.i32s(table.counts, table.from[frame], table.length(frame));
            flushWhenFull();
        }
        flush();
        return contents.digest();
    }

    void addShaft(int outing, int span, ShaftTable table) {
        for (int frame = 0; frame < table.frames; frame++) {
            buffer.i32(table.samplesBefore[frame]);
            buffer.i64(table.tick[frame]);
            buffer.i64(table.pulses[frame]);
            buffer.i32(table.length(frame));
            for (int i = table.from[frame]; i < table.from[frame + 1]; i++) {
                buffer.i64(table.pulseTick[i]);
            }
            flushWhenFull();
        }
        flush();
        add(Block.Kind.SHAFT, outing, span, table.tick[0], table.frames, contents.digest());
    }

    void addEvents(Block.Kind kind, int outing, int span, List<Event> events) {
        for (Event event : events) {
            buffer.i32(event.samplesBefore());
            buffer.i32(event.shaftsBefore());
            buffer.u8(event.type().code);
            for (long number : event.numbers()) {
                buffer.i64(number);
            }
            for (String text : event.texts()) {
                byte[] utf8 = text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
                buffer.i32(utf8.length);
                buffer.raw(utf8, 0, utf8.length);
            }
            flush();
        }
        add(kind, outing, span, 0, events.size(), contents.digest());
    }

    private void flushWhenFull() {
        if (buffer.size() >= FULL) {
            flush();
        }
    }

    private void flush() {
        contents.update(buffer.array(), 0, buffer.size());
        buffer.clear();
    }

    private void add(Block.Kind kind, int outing, int span, long first, int count, byte[] digest) {
        links.update(link);
        buffer.u8(kind.code());
        buffer.i32(outing);
        buffer.i32(span);
        buffer.i64(first);
        buffer.i32(count);
        links.update(buffer.array(), 0, buffer.size());
        buffer.clear();
        links.update(digest);
        link = links.digest();
    }
}
