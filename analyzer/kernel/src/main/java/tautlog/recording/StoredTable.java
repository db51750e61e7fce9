package tautlog.recording;

/** The tables of a recording, in the order in which a new one gets them. {@code analyzer/RECORDING.md}, "Tables". */
enum StoredTable {
    BEGUN("begun (outing INTEGER NOT NULL, lost INTEGER NOT NULL)"),
    RECORDING("recording (winch TEXT NOT NULL, id TEXT NOT NULL)"),
    EVIDENCE("evidence (seq INTEGER PRIMARY KEY, outing INTEGER NOT NULL, span INTEGER NOT NULL,"
            + " kind INTEGER NOT NULL, first INTEGER NOT NULL, last INTEGER NOT NULL, tick INTEGER NOT NULL,"
            + " last_tick INTEGER NOT NULL, count INTEGER NOT NULL, link BLOB NOT NULL, block BLOB NOT NULL)"),
    TAIL("tail (id INTEGER PRIMARY KEY, outing INTEGER NOT NULL, span INTEGER NOT NULL," + " blocks BLOB NOT NULL)"),
    SECONDS("seconds (id INTEGER PRIMARY KEY, outing INTEGER NOT NULL, span INTEGER NOT NULL,"
            + " block BLOB NOT NULL)"),
    FINDING("finding (id INTEGER PRIMARY KEY, outing INTEGER NOT NULL, kind TEXT NOT NULL,"
            + " start INTEGER NOT NULL, json TEXT NOT NULL, crc INTEGER NOT NULL)");

    private final String columns;

    StoredTable(String columns) {
        this.columns = columns;
    }

    /** The statement that makes it, as SQLite keeps it. */
    String definition() {
        return "CREATE TABLE " + columns;
    }

    /** Makes it where it is not there. */
    String ifMissing() {
        return "CREATE TABLE IF NOT EXISTS " + columns;
    }
}
