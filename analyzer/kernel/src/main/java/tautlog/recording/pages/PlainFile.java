package tautlog.recording.pages;

import static tautlog.recording.pages.NotPlainException.require;

import java.util.ArrayList;
import java.util.List;

/** An SQLite file in memory, nothing of which stands in a journal or log beside it. */
public final class PlainFile {
    private static final int SCHEMA = 1;
    /** Chosen: several times as many as a recording has. */
    private static final int MOST_TABLES = 64;

    private static final int USER_VERSION = 60;
    private static final int APPLICATION_ID = 68;

    private final Pages pages;

    private PlainFile(Pages pages) {
        this.pages = pages;
    }

    /**
     * @param bytes all of the file's; not copied, not modified
     * @throws NotPlainException if its header is not that of a plain file of just that length
     */
    public static PlainFile of(byte[] bytes) throws NotPlainException {
        return new PlainFile(new Pages(bytes));
    }

    public int userVersion() {
        return pages.i32(USER_VERSION);
    }

    public int applicationId() {
        return pages.i32(APPLICATION_ID);
    }

    /** @throws NotPlainException if there is anything but tables (an index, a view, a trigger), or its list is damaged */
    public List<Table> tables() throws NotPlainException {
        List<Table> tables = new ArrayList<>();
        for (Row row : new Table(pages, "", SCHEMA).rows(MOST_TABLES)) {
            tables.add(table(row));
        }
        return tables;
    }

    /** Its columns: type, name, name of the table that it belongs to, first page, definition. */
    private Table table(Row row) throws NotPlainException {
        require(row.columns() == 5 && row.isWholeNumber(3), "its list of tables");
        for (int text : new int[] {0, 1, 2, 4}) {
            require(row.isText(text), "its list of tables");
        }
        String name = row.text(1);
        String definition = row.text(4);
        require(row.text(0).equals("table") && row.text(2).equals(name), "not only tables");
        require(definition.startsWith("CREATE TABLE " + name + " ("), "a table of another name");
        long root = row.wholeNumber(3);
        require(root > SCHEMA && root <= pages.count, "a table without pages");
        return new Table(pages, definition, (int) root);
    }
}
