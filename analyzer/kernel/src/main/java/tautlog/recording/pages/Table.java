package tautlog.recording.pages;

import static tautlog.recording.pages.NotPlainException.require;

import java.util.ArrayList;
import java.util.List;

/** A table of a plain file, found by walking its tree. */
public final class Table {
    private static final int INNER = 5;
    private static final int LEAF = 13;
    private static final int INNER_HEADER = 12;
    private static final int LEAF_HEADER = 8;
    /** As SQLite. */
    private static final int DEEPEST = 20;

    private final Pages pages;
    private final String definition;
    private final int root;

    Table(Pages pages, String definition, int root) {
        this.pages = pages;
        this.definition = definition;
        this.root = root;
    }

    /** The statement that made it, in SQLite's spelling. */
    public String definition() {
        return definition;
    }

    /**
     * All rows, in the order of their numbers.
     *
     * @param most how many there may be
     * @throws NotPlainException if there are more, or its pages are not beyond doubt
     */
    public List<Row> rows(int most) throws NotPlainException {
        List<Row> rows = new ArrayList<>();
        walk(root, 1, rows, most);
        return rows;
    }

    /** Ends whatever its pages say: one that is met again gives rows that were told, or is as deep as none may be. */
    private void walk(int page, int depth, List<Row> rows, int most) throws NotPlainException {
        require(depth <= DEEPEST, "a tree that goes in circles");
        int tree = pages.tree(page);
        if (pages.u8(tree) == LEAF) {
            int cells = cells(page, LEAF_HEADER, depth == 1);
            require(rows.size() + cells <= most, "many rows");
            for (int i = 0; i < cells; i++) {
                add(cell(page, LEAF_HEADER, cells, i), pages.end(page), rows);
            }
        } else {
            require(pages.u8(tree) == INNER, "no page of a table");
            int cells = cells(page, INNER_HEADER, page == 1); // which has less room than its only child
            for (int i = 0; i < cells; i++) {
                walk(pages.i32(cell(page, INNER_HEADER, cells, i)), depth + 1, rows, most);
            }
            walk(pages.i32(tree + 8), depth + 1, rows, most);
        }
    }

    /** How many cells a page has. */
    private int cells(int page, int header, boolean mayBeNone) throws NotPlainException {
        int tree = pages.tree(page);
        int cells = pages.u16(tree + 3);
        require(cells > 0 || mayBeNone, "an empty page in a tree");
        require(tree + header + 2 * cells <= pages.end(page), "more cells than a page has room for");
        return cells;
    }

    /** Where cell {@code i} begins. */
    private int cell(int page, int header, int cells, int i) throws NotPlainException {
        int places = pages.tree(page) + header;
        int cell = pages.start(page) + pages.u16(places + 2 * i);
        require(cell >= places + 2 * cells && cell <= pages.end(page) - 4, "a cell outside its page");
        return cell;
    }

    private void add(int cell, int end, List<Row> rows) throws NotPlainException {
        Varint head = new Varint(pages.bytes, cell, end);
        long size = head.next();
        long number = head.next();
        require(rows.isEmpty() || rows.get(rows.size() - 1).number() < number, "rows out of order");
        rows.add(new Row(number, new Payload(pages, head.at(), size, end)));
    }
}
