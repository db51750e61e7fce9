package tautlog.recording.pages;

import static tautlog.recording.pages.NotPlainException.require;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** One row of a table: its number and its columns, counted from 0. */
public final class Row {
    private static final int[] WIDTHS = {0, 1, 2, 3, 4, 6, 8};
    private static final int ZERO = 8;
    private static final int ONE = 9;
    private static final int BYTES = 12;
    /** Chosen: no table of a recording has more. */
    private static final int MOST_COLUMNS = 16;

    private final long number;
    private final Payload payload;
    private final int[] types = new int[MOST_COLUMNS];
    private final int[] from = new int[MOST_COLUMNS + 1];
    private int columns;

    Row(long number, Payload payload) throws NotPlainException {
        this.number = number;
        this.payload = payload;
        byte[] start = payload.copy(0, Math.min(payload.size(), 9 * (MOST_COLUMNS + 1)));
        Varint lengths = new Varint(start, 0, start.length);
        long header = lengths.next();
        require(header >= 1 && header <= start.length, "a row without columns, or with many");
        readTypes(new Varint(start, lengths.at(), (int) header), (int) header);
        require(from[columns] == payload.size(), "columns longer or shorter than their row");
    }

    private void readTypes(Varint header, int end) throws NotPlainException {
        from[0] = end;
        while (header.at() < end) {
            require(columns < MOST_COLUMNS, "many columns");
            long type = header.next();
            int left = payload.size() - from[columns];
            long length = length(type);
            require(length >= 0 && length <= left, "a column that leaves its row");
            types[columns] = (int) type;
            from[columns + 1] = from[columns] + (int) length;
            columns++;
        }
    }

    /** In bytes; −1 for what no plain recording has: numbers that are not whole, and types kept for later. */
    private static long length(long type) {
        if (type < 0) {
            return -1;
        }
        if (type < WIDTHS.length) {
            return WIDTHS[(int) type];
        }
        if (type < BYTES) {
            return type == ZERO || type == ONE ? 0 : -1;
        }
        return (type - BYTES) / 2;
    }

    /** The row's own number, by which the table is sorted. */
    public long number() {
        return number;
    }

    public int columns() {
        return columns;
    }

    public boolean isNull(int column) {
        return types[column] == 0;
    }

    public boolean isWholeNumber(int column) {
        return types[column] >= 1 && types[column] <= ONE;
    }

    public boolean isBytes(int column) {
        return types[column] >= BYTES && types[column] % 2 == 0;
    }

    public boolean isText(int column) {
        return types[column] >= BYTES && types[column] % 2 == 1;
    }

    /** Of a column that {@link #isWholeNumber}. */
    public long wholeNumber(int column) {
        int type = types[column];
        if (type >= ZERO) {
            return type == ONE ? 1 : 0;
        }
        byte[] stored = payload.copy(from[column], WIDTHS[type]);
        long value = stored[0];
        for (int i = 1; i < stored.length; i++) {
            value = value << 8 | (stored[i] & 0xFF);
        }
        return value;
    }

    /** Of a column that {@link #isBytes}, or the UTF-8 of one that {@link #isText}; a copy. */
    public byte[] bytes(int column) {
        return payload.copy(from[column], from[column + 1] - from[column]);
    }

    /**
     * Of a column that {@link #isText}.
     *
     * @throws NotPlainException if it is no UTF-8
     */
    public String text(int column) throws NotPlainException {
        byte[] stored = bytes(column);
        String text = new String(stored, StandardCharsets.UTF_8);
        require(Arrays.equals(text.getBytes(StandardCharsets.UTF_8), stored), "a text that is no UTF-8");
        return text;
    }
}
