package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;

/** The rows of a copy that {@link RecordingFile#beginCopy} began: tables whole, and evidence row by row with other blocks. */
final class CopiedRows {
    private static final String INSERT = "INSERT INTO evidence (seq, outing, span, kind, first, last, tick, last_tick,"
            + " count, link, block) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private final Connection connection;

    CopiedRows(Connection connection) {
        this.connection = connection;
    }

    /** What goes into a row in place of its block. */
    interface Recoding {
        byte[] block(EvidenceRow row) throws SQLException, DamagedBlockException;
    }

    /** Copies all tables but those named as they are. */
    void tablesBut(Set<String> others) throws SQLException {
        for (String table : RecordingFile.tables(connection)) {
            if (!others.contains(table)) {
                try (Statement statement = connection.createStatement()) {
                    String name = '"' + table.replace("\"", "\"\"") + '"';
                    statement.execute("INSERT INTO main." + name + " SELECT * FROM old." + name);
                }
            }
        }
    }

    /** Copies every row of evidence, its block coded anew. */
    void evidence(Recoding recoding) throws SQLException, DamagedBlockException {
        try (PreparedStatement select = connection.prepareStatement(
                        EvidenceRow.SELECT.replace("FROM evidence", "FROM old.evidence") + " ORDER BY seq");
                ResultSet rows = select.executeQuery();
                PreparedStatement insert = connection.prepareStatement(INSERT)) {
            while (rows.next()) {
                EvidenceRow row = EvidenceRow.of(rows);
                insert(insert, row, recoding.block(row));
            }
        }
    }

    /** One row more. */
    void add(EvidenceRow row) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert(insert, row, row.bytes());
        }
    }

    private static void insert(PreparedStatement insert, EvidenceRow row, byte[] bytes) throws SQLException {
        insert.setLong(1, row.seq());
        insert.setInt(2, row.outing());
        insert.setInt(3, row.span());
        insert.setInt(4, row.kind());
        insert.setLong(5, row.reach().firstNumber());
        insert.setLong(6, row.reach().lastNumber());
        insert.setLong(7, row.reach().firstTick());
        insert.setLong(8, row.reach().lastTick());
        insert.setInt(9, row.count());
        insert.setBytes(10, row.link());
        insert.setBytes(11, bytes);
        insert.executeUpdate();
    }

    void commit() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("COMMIT");
        }
    }
}
