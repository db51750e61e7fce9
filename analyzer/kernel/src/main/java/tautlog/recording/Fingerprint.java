package tautlog.recording;

import java.nio.ByteBuffer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.zip.CRC32C;

/**
 * Sums up the rows of an outing: the link of its last sealed row, and a CRC-32C over all that a replay and a reader of what was said
 * live can see. The link alone would stay when a block is damaged in place.
 *
 * <p>First all rows of evidence, in order, then the others.
 */
final class Fingerprint {
    private final CRC32C crc = new CRC32C();
    private final ByteBuffer numbers = ByteBuffer.allocate(8 * Long.BYTES);
    private String link = "";

    /** Of an outing none of whose rows were read. */
    static String of(Connection connection, int outing) throws SQLException {
        Fingerprint fingerprint = new Fingerprint();
        EvidenceRow.each(connection, outing, Long.MIN_VALUE, Long.MAX_VALUE, fingerprint::add);
        return fingerprint.withOtherRows(connection, outing);
    }

    void add(EvidenceRow row) {
        Reach reach = row.reach();
        add(
                row.seq(),
                row.span(),
                row.kind(),
                reach.firstNumber(),
                reach.lastNumber(),
                reach.firstTick(),
                reach.lastTick(),
                row.count());
        crc.update(row.link());
        crc.update(row.bytes());
        link = row.link().length == 0 ? link : Chain.hex(row.link());
    }

    private void add(long... values) {
        numbers.clear();
        for (long value : values) {
            numbers.putLong(value);
        }
        crc.update(numbers.flip());
    }

    /** The whole of it, once all rows of evidence were given to {@link #add}. */
    String withOtherRows(Connection connection, int outing) throws SQLException {
        read(connection, "SELECT id, span, blocks FROM tail WHERE outing = ? ORDER BY id", 2, outing);
        read(connection, "SELECT id, start, crc, json FROM finding WHERE outing = ? ORDER BY id", 3, outing);
        return link + "-" + Long.toHexString(crc.getValue());
    }

    /** @param numbers how many columns are numbers; the one behind them is bytes or text */
    private void read(Connection connection, String select, int numbers, int outing) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(select)) {
            statement.setInt(1, outing);
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    add(EvidenceRow.numbers(rows, 1, numbers));
                    crc.update(EvidenceRow.bytes(rows, numbers + 1));
                }
            }
        }
    }
}
