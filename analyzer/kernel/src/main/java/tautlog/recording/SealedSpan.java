package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a piece of an outing stands that is there for good, so that it can be read without what is before it.
 *
 * @param firstRow of its rows of evidence
 * @param firstTick the least of its frames' ticks, of samples and shaft
 * @param lastTick the greatest of them
 */
public record SealedSpan(long firstRow, long lastRow, long firstTick, long lastTick) {
    static List<SealedSpan> read(Connection connection, Outing outing, long after) throws SQLException {
        List<SealedSpan> spans = new ArrayList<>();
        try (PreparedStatement select =
                connection.prepareStatement("SELECT min(seq), max(seq), min(tick), max(last_tick) FROM evidence"
                        + " WHERE outing = ? AND seq > ? AND kind IN (2, 3) GROUP BY span ORDER BY min(seq)")) {
            select.setInt(1, outing.index());
            select.setLong(2, after);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    spans.add(new SealedSpan(rows.getLong(1), rows.getLong(2), rows.getLong(3), rows.getLong(4)));
                }
            }
        }
        return spans;
    }
}
