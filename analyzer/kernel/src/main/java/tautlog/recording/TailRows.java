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
    /**
     * Rows that were damaged when their outing was finished, and set aside: their span is stored as −1 − span.
     *
     * @param span of the first of them; nothing is known of events from it on until the next naming
     * @param damaged why, by row
     */
    record Aside(int span, Map<Long, String> damaged) {
        /** What is stored in place of a span. */
        static final String STORED = "-1 - span";

        static Aside read(Connection connection, int outing, SpanCodec codec) throws SQLException {
            int first = Integer.MAX_VALUE;
            Map<Long, String> damaged = new TreeMap<>();
            try (PreparedStatement select = connection.prepareStatement(
                    "SELECT id, -1 - span, blocks FROM tail WHERE outing = ? AND span < 0 ORDER BY id")) {
                select.setInt(1, outing);
                try (ResultSet rows = select.executeQuery()) {
                    while (rows.next()) {
                        first = Math.min(first, rows.getInt(2));
                        long id = rows.getLong(1);
                        append(id, EvidenceRow.bytes(rows, 3), codec, new Span(outing, rows.getInt(2)), damaged);
                        damaged.putIfAbsent(id, "it was set aside");
                    }
                }
            }
            return new Aside(first, damaged);
        }
    }

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

    static void append(long id, byte[] blocks, SpanCodec codec, Span span, Map<Long, String> damaged) {
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
