package tautlog.recording;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * What a thinned outing's figures rest on when its readings are gone: the index of its samples, its findings, its seconds. None of
 * it is in the chain while readings can prove it; so the row that says that they were thinned holds this digest.
 */
final class ThinnedRest {
    private ThinnedRest() {}

    /** SHA-256 as 64 hexadecimal characters; what goes in: {@code analyzer/RECORDING.md}, "Thinned". */
    static String digest(Connection connection, int outing) throws SQLException {
        MessageDigest digest = Chain.sha256();
        ByteWriter buffer = new ByteWriter();
        each(
                connection,
                "first, last, tick, last_tick FROM evidence WHERE outing = ? AND kind = 2 ORDER BY seq",
                outing,
                row -> {
                    for (int column = 1; column <= 4; column++) {
                        buffer.i64(row.getLong(column));
                    }
                    digest.update(buffer.array(), 0, buffer.size());
                    buffer.clear();
                });
        each(connection, "kind, start, json FROM finding WHERE outing = ? ORDER BY id", outing, row -> {
            String line = row.getString(1) + "|" + row.getLong(2) + "|" + row.getString(3) + "\n";
            digest.update(line.getBytes(StandardCharsets.UTF_8));
        });
        each(
                connection,
                "block FROM seconds WHERE outing = ? ORDER BY id",
                outing,
                row -> digest.update(EvidenceRow.bytes(row, 1)));
        return Chain.hex(digest.digest());
    }

    private interface RowSink {
        void accept(ResultSet row) throws SQLException;
    }

    private static void each(Connection connection, String sql, int outing, RowSink sink) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("SELECT " + sql)) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    sink.accept(rows);
                }
            }
        }
    }
}
