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
    private final List<Row> rows = new ArrayList<>();
    private int visited;

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
     * @throws NotPlainException if its pages are not beyond doubt
     */
    public List<Row> rows() throws NotPlainException {
        rows.clear();
        visited = 0;
        walk(root, 1);
        return List.copyOf(rows);
    }

    private void walk(int page, int depth) throws NotPlainException {
        require(depth <= DEEPEST && ++visited <= pages.count, "a tree that goes in circles");
        int tree = pages.tree(page);
        boolean isLeaf = pages.u8(tree) == LEAF;
        require(isLeaf || pages.u8(tree) == INNER, "no page of a table");
        int cells = pages.u16(tree + 3);
        int header = isLeaf ? LEAF_HEADER : INNER_HEADER;
        int end = pages.start(page) + pages.size;
        require(tree + header + 2 * cells <= end, "more cells than a page has room for");
        boolean mayBeEmpty = isLeaf ? depth == 1 : page == 1; // the first page has less room than its only child
        require(cells > 0 || mayBeEmpty, "an empty page in a tree");
        for (int i = 0; i < cells; i++) {
            int offset = pages.u16(tree + header + 2 * i);
            require(offset >= tree - pages.start(page) + header + 2 * cells && offset <= pages.size - 4, "a cell");
            int cell = pages.start(page) + offset;
            if (isLeaf) {
                add(cell, end);
            } else {
                walk(pages.i32(cell), depth + 1);
            }
        }
        if (!isLeaf) {
            walk(pages.i32(tree + 8), depth + 1);
        }
    }

    private void add(int cell, int end) throws NotPlainException {
        Varint head = new Varint(pages.bytes, cell, end);
        long size = head.next();
        long number = head.next();
        require(rows.isEmpty() || rows.get(rows.size() - 1).number() < number, "rows out of order");
        rows.add(new Row(number, new Payload(pages, head.at(), size, end)));
    }
}
