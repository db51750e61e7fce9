package tautlog.recording.pages;

import static tautlog.recording.pages.NotPlainException.require;

/** The bytes of one row: the first of them in its cell, the rest in a chain of pages, each with the number of the next in front. */
final class Payload {
    private static final int NEXT = 4;

    private final Pages pages;
    private final int at;
    private final int inCell;
    private final int size;
    private final int firstPage;

    /**
     * @param at where it begins in the file
     * @param size 0 or more
     * @param end behind the last byte of the cell's page
     */
    Payload(Pages pages, int at, long size, int end) throws NotPlainException {
        require(size >= 0 && size <= pages.bytes.length, "a row longer than the file");
        this.pages = pages;
        this.at = at;
        this.size = (int) size;
        inCell = inCell(this.size, pages.size);
        boolean goesOn = inCell < this.size;
        require(at + inCell + (goesOn ? NEXT : 0) <= end, "a row that leaves its page");
        firstPage = goesOn ? pages.i32(at + inCell) : 0;
        requireChain();
    }

    /** Of a leaf of a table: section 1.6. */
    private static int inCell(int size, int page) {
        int most = page - 35;
        if (size <= most) {
            return size;
        }
        int least = (page - 12) * 32 / 255 - 23;
        int fitting = least + (size - least) % (page - NEXT);
        return fitting <= most ? fitting : least;
    }

    private void requireChain() throws NotPlainException {
        int page = firstPage;
        for (int left = size - inCell; left > 0; left -= pages.size - NEXT) {
            page = pages.i32(pages.start(page));
        }
    }

    int size() {
        return size;
    }

    /** Copies {@code n} bytes from {@code from} on, all of them within it. */
    byte[] copy(int from, int n) {
        byte[] to = new byte[n];
        int skip = from;
        int done = 0;
        int segment = at;
        int length = inCell;
        int next = firstPage;
        while (done < n) {
            int part = Math.min(n - done, length - skip);
            if (part > 0) {
                System.arraycopy(pages.bytes, segment + skip, to, done, part);
                done += part;
            }
            skip = Math.max(0, skip - length);
            if (done < n) {
                int start = (next - 1) * pages.size;
                next = pages.i32(start);
                segment = start + NEXT;
                length = pages.size - NEXT;
            }
        }
        return to;
    }
}
