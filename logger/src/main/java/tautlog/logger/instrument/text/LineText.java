package tautlog.logger.instrument.text;

import java.nio.charset.StandardCharsets;

/**
 * The characters of one line, one a byte. A pattern may look at them {@link #MOST_LOOKS} times: by then every sane one is
 * done, and one that would try for ever is stopped.
 */
final class LineText implements CharSequence {
    static final int LONGEST = 128;
    /** Chosen: 128 characters looked at 128 times, about a tenth of a millisecond. */
    private static final int MOST_LOOKS = LONGEST * LONGEST;

    private static final char STX = 2;
    private static final char ETX = 3;

    /** A pattern looked too often. */
    static final class Exhausted extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Exhausted() {
            super("the pattern does not come to an end on this line", null, false, false);
        }
    }

    /** One more for the carriage return of the line's end. */
    private final byte[] bytes = new byte[LONGEST + 1];

    private int length;
    private int looksLeft;

    void clear() {
        length = 0;
    }

    /** False when there is no room; the newest byte then takes the last place, so that a line end is still found. */
    boolean append(byte next) {
        if (length < bytes.length) {
            bytes[length++] = next;
            return length <= LONGEST || next == '\r';
        }
        bytes[length - 1] = next;
        return false;
    }

    /** Takes the last byte away if it is {@code expected}. */
    boolean removeLast(byte expected) {
        if (length > 0 && bytes[length - 1] == expected) {
            length--;
            return true;
        }
        return false;
    }

    /** Whether all characters are printable ASCII, or the STX and ETX that some devices put around a line. */
    boolean isClean() {
        for (int i = 0; i < length; i++) {
            byte at = bytes[i];
            if ((at < ' ' && at != STX && at != ETX) || at == 0x7f) {
                return false; // bytes above ASCII are below zero
            }
        }
        return true;
    }

    /** A pattern begins to look. */
    LineText looking() {
        looksLeft = MOST_LOOKS;
        return this;
    }

    @Override
    public int length() {
        return length;
    }

    @Override
    public char charAt(int index) {
        if (looksLeft-- <= 0) {
            throw new Exhausted();
        }
        return at(index);
    }

    /** As {@link #charAt}, for our own eyes. */
    char at(int index) {
        return (char) (bytes[index] & 0xff);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
        return new String(bytes, start, end - start, StandardCharsets.ISO_8859_1);
    }

    @Override
    public String toString() {
        return new String(bytes, 0, length, StandardCharsets.ISO_8859_1);
    }
}
