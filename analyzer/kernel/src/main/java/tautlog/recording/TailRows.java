package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the tail rows of an outing hold, put together.
 *
 * @param span empty when there are none
 * @param damaged why, by row
 */
record TailRows(Span span, Map<Long, String> damaged) {
    /** In place of a span: the row is damaged and was set aside when its outing was finished. */
    static final int ASIDE = -1;

    static TailRows read(Connection connection, int outing, SpanCodec codec) throws SQLException {
        Span span = new Span(outing, 0);
        Map<Long, String> damaged = new TreeMap<>();
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT id, span, blocks FROM tail WHERE outing = ? AND span >= 0 ORDER BY id")) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    if (span.isEmpty()) {
                        span = new Span(outing, rows.getInt(2));
                    }
                    append(rows.getLong(1), EvidenceRow.bytes(rows, 3), codec, span, damaged);
                }
            }
        }
        return new TailRows(span, damaged);
    }

    private static void append(long id, byte[] blocks, SpanCodec codec, Span span, Map<Long, String> damaged) {
        try {
            for (int at = 0; at < blocks.length; ) {
                Block block = Block.read(blocks, at);
                codec.append(block, span);
                at += block.size();
            }
        } catch (DamagedBlockException e) {
            damaged.put(id, String.valueOf(e.getMessage()));
        }
    }
}
