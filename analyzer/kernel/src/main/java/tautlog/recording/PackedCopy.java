package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;

/** Writes a recording again, every block coded for keeping where that is smaller ({@link SpanCodec#pack}); all else as it is, the links too. */
final class PackedCopy {
    private final Connection connection;
    private final SpanCodec codec = new SpanCodec();

    private PackedCopy(Connection connection) {
        this.connection = connection;
    }

    /** @throws RecordingException if a block is not what its checksum says */
    static void write(Path file, Path copy) throws SQLException, RecordingException {
        try (Connection connection = RecordingFile.beginCopy(file, copy, RecordingFile.PACKED_PAGE_SIZE)) {
            PackedCopy written = new PackedCopy(connection);
            CopiedRows rows = new CopiedRows(connection);
            rows.tablesBut(Set.of("evidence", "seconds"));
            rows.evidence(row -> written.codec.pack(row.open()).bytes());
            written.seconds();
            try (Statement statement = connection.createStatement()) {
                long version = RecordingFile.query(connection, "PRAGMA old.user_version");
                statement.execute("PRAGMA main.user_version = " + Math.max(version, RecordingFile.PACKED_VERSION));
            }
            rows.commit();
        } catch (DamagedBlockException e) {
            throw new RecordingException(file + ": is not packed, it is damaged: " + e.getMessage(), e);
        }
    }

    /** Those of thinned outings stay as they are: the row that says that they were thinned holds a digest of their bytes. */
    private void seconds() throws SQLException, DamagedBlockException {
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT id, outing, span, block, outing IN (SELECT outing"
                                + " FROM old.evidence WHERE kind = 7) FROM old.seconds ORDER BY id");
                ResultSet rows = select.executeQuery();
                PreparedStatement insert = connection.prepareStatement(
                        "INSERT INTO main.seconds (id, outing, span, block) VALUES (?, ?, ?, ?)")) {
            while (rows.next()) {
                byte[] bytes = EvidenceRow.bytes(rows, 4);
                insert.setLong(1, rows.getLong(1));
                insert.setInt(2, rows.getInt(2));
                insert.setInt(3, rows.getInt(3));
                insert.setBytes(
                        4,
                        rows.getBoolean(5)
                                ? bytes
                                : codec.pack(Block.read(bytes, 0)).bytes());
                insert.executeUpdate();
            }
        }
    }
}
