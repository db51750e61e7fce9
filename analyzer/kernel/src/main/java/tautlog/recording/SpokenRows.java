package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Consumer;
import tautlog.detect.Finding;
import tautlog.detect.Second;

/** What was said live and is no evidence, because it can be worked out again: findings and seconds. */
final class SpokenRows {
    private SpokenRows() {}

    /** @param damaged takes place and reason of what cannot be read */
    static List<Finding> findings(Connection connection, int outing, Consumer<String> damaged) throws SQLException {
        List<Finding> findings = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT id, kind, start, json, crc FROM finding WHERE outing = ? ORDER BY id")) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    String kind = String.valueOf(rows.getString(2));
                    String json = String.valueOf(rows.getString(4));
                    if (FindingJson.crc(kind, rows.getLong(3), json) == rows.getLong(5)) {
                        findings.add(FindingJson.read(kind, json));
                    } else {
                        damaged.accept("finding " + rows.getLong(1) + ": its checksum (CRC-32C) does not fit");
                    }
                }
            }
        }
        return findings;
    }

    /** @param damaged takes place and reason of what cannot be read */
    static List<Second> seconds(Connection connection, int outing, Consumer<String> damaged) throws SQLException {
        List<Second> seconds = new ArrayList<>();
        SpanCodec codec = new SpanCodec();
        try (PreparedStatement select =
                connection.prepareStatement("SELECT id, span, block FROM seconds WHERE outing = ? ORDER BY id")) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    Span span = new Span(outing, rows.getInt(2));
                    append(rows.getLong(1), EvidenceRow.bytes(rows, 3), span, codec, seconds, damaged);
                }
            }
        }
        seconds.addAll(TailRows.read(new SqlRows(connection), outing, codec).span().seconds);
        return seconds;
    }

    private static void append(
            long id, byte[] bytes, Span span, SpanCodec codec, List<Second> seconds, Consumer<String> damaged) {
        try {
            codec.append(open(bytes, span), span);
            seconds.addAll(span.seconds);
        } catch (DamagedBlockException e) {
            damaged.accept("seconds block " + id + ": " + e.getMessage());
        }
    }

    /** The block, checked against its CRC and against the row that holds it. */
    private static Block open(byte[] bytes, Span row) throws DamagedBlockException {
        Block block = Block.read(bytes, 0);
        if (block.size() != bytes.length) {
            throw new DamagedBlockException((bytes.length - block.size()) + " bytes follow it");
        }
        if (block.kind() != Block.Kind.SECONDS || block.outing() != row.outing || block.span() != row.index) {
            throw new DamagedBlockException("it stands in a row of another kind, outing or span");
        }
        return block;
    }

    /** Every outing that something was said of, known or not. */
    static SortedSet<Integer> outings(Connection connection) throws SQLException {
        SortedSet<Integer> outings = new TreeSet<>();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT outing FROM finding UNION SELECT outing FROM seconds");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                outings.add(rows.getInt(1));
            }
        }
        return outings;
    }
}
