package tautlog.recording.pages;

import static tautlog.recording.pages.NotPlainException.require;

import java.util.Arrays;

/** The bytes of a file in pages of equal size, counted from 1, as its header says. */
final class Pages {
    private static final int HEADER = 100;
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    /** Bytes 18 to 23: journal, not log, for writing and reading; no bytes kept free in a page; the three shares, which are fixed. */
    private static final byte[] FIXED = {1, 1, 0, 64, 32, 32};

    private static final int SCHEMA_FORMAT = 4;
    private static final int UTF_8 = 1;

    final byte[] bytes;
    final int size;
    final int count;

    Pages(byte[] bytes) throws NotPlainException {
        this.bytes = bytes;
        require(bytes.length >= 512 && Arrays.equals(bytes, 0, 16, MAGIC, 0, 16), "no header");
        size = u16(16);
        require(size >= 512 && Integer.bitCount(size) == 1, "size of a page");
        require(Arrays.equals(bytes, 18, 24, FIXED, 0, 6), "in log mode, or its pages are cut up otherwise");
        count = i32(28);
        require((long) count * size == bytes.length, "length");
        require(i32(24) == i32(92), "written by a program that keeps no count of pages");
        require(i32(44) == SCHEMA_FORMAT && i32(52) == 0 && i32(56) == UTF_8, "of another kind");
    }

    /** Where page {@code page} begins. */
    int start(int page) throws NotPlainException {
        require(page >= 1 && page <= count, "a page that is not there");
        return (page - 1) * size;
    }

    /** Behind its last byte. */
    int end(int page) throws NotPlainException {
        return start(page) + size;
    }

    /** Where the b-tree in {@code page} begins: behind the header in the first. */
    int tree(int page) throws NotPlainException {
        return start(page) + (page == 1 ? HEADER : 0);
    }

    int u8(int at) {
        return bytes[at] & 0xFF;
    }

    int u16(int at) {
        return u8(at) << 8 | u8(at + 1);
    }

    int i32(int at) {
        return u16(at) << 16 | u16(at + 2);
    }
}
