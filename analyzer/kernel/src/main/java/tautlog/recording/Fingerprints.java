package tautlog.recording;

import java.nio.ByteBuffer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32C;

/**
 * Sums up the rows of each outing: the link of its last sealed row, and a CRC-32C over all that a replay and a reader of what was
 * said live can see. The link alone would stay when a block is damaged in place.
 */
final class Fingerprints {
    private static final String EVIDENCE =
            "SELECT outing, seq, span, kind, first, last, tick, last_tick, count, link, block FROM evidence";
    private static final String TAILS = "SELECT outing, id, span, blocks FROM tail";
    private static final String FINDINGS = "SELECT outing, id, start, crc, json FROM finding";

    private final Map<Integer, Sum> sums = new TreeMap<>();

    /** Of one outing, so far. */
    private static final class Sum {
        final CRC32C crc = new CRC32C();
        private final ByteBuffer number = ByteBuffer.allocate(Long.BYTES);
        String link = "";

        void add(long value) {
            crc.update(number.clear().putLong(value).flip());
        }
    }

    private Fingerprints() {}

    static Map<Integer, String> of(Connection connection) throws SQLException {
        return read(connection, "").all();
    }

    /** Of one outing; empty where there is none. */
    static String of(Connection connection, int outing) throws SQLException {
        return read(connection, " WHERE outing = " + outing).all().getOrDefault(outing, "");
    }

    private static Fingerprints read(Connection connection, String where) throws SQLException {
        Fingerprints fingerprints = new Fingerprints();
        fingerprints.read(
                connection, EVIDENCE + where + " ORDER BY seq", 8, row -> Chain.hex(EvidenceRow.bytes(row, 10)));
        fingerprints.read(connection, TAILS + where + " ORDER BY id", 2, row -> "");
        fingerprints.read(connection, FINDINGS + where + " ORDER BY id", 3, row -> "");
        return fingerprints;
    }

    private Map<Integer, String> all() {
        Map<Integer, String> all = new TreeMap<>();
        sums.forEach((outing, sum) -> all.put(outing, sum.link + "-" + Long.toHexString(sum.crc.getValue())));
        return all;
    }

    /** The link of a row; empty where rows have none. */
    private interface Link {
        String of(ResultSet row) throws SQLException;
    }

    /** @param numbers how many columns behind the outing's are numbers; those behind them are bytes or text */
    private void read(Connection connection, String select, int numbers, Link link) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(select);
                ResultSet rows = statement.executeQuery()) {
            int columns = rows.getMetaData().getColumnCount();
            while (rows.next()) {
                add(rows, numbers, columns, link);
            }
        }
    }

    private void add(ResultSet row, int numbers, int columns, Link link) throws SQLException {
        Sum sum = sums.computeIfAbsent(row.getInt(1), outing -> new Sum());
        for (long number : EvidenceRow.numbers(row, 2, numbers)) {
            sum.add(number);
        }
        for (int i = 2 + numbers; i <= columns; i++) {
            sum.crc.update(EvidenceRow.bytes(row, i));
        }
        String linked = link.of(row);
        sum.link = linked.isEmpty() ? sum.link : linked;
    }
}
