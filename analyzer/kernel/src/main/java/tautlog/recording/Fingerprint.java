package tautlog.recording;

import java.nio.ByteBuffer;
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
    static String of(Rows rows, int outing) throws SQLException {
        Fingerprint fingerprint = new Fingerprint();
        rows.evidence(outing, Long.MIN_VALUE, Long.MAX_VALUE, fingerprint::add);
        return fingerprint.withOtherRows(rows, outing);
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
    String withOtherRows(Rows rows, int outing) throws SQLException {
        rows.tails(outing, this::add);
        rows.findings(outing, this::add);
        return link + "-" + Long.toHexString(crc.getValue());
    }

    private void add(long[] values, byte[] bytes) {
        add(values);
        crc.update(bytes);
    }
}
