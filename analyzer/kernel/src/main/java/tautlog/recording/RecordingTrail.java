package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.TreeMap;

/**
 * What somebody who follows a recording has read of it so far: {@link Recording#follow} reads on from there, also when the file
 * was closed and opened again in between. About 40 bytes for each block of samples are kept, and 24 for each clock fix.
 */
public final class RecordingTrail {
    private final TreeMap<Integer, OutingTrail> outings = new TreeMap<>();
    private final SpanCodec codec = new SpanCodec();
    private long seq;

    /** Oldest first. */
    public List<OutingTrail> outings() {
        return List.copyOf(outings.values());
    }

    /** How many rows of evidence were read: unchanged when nothing was sealed since. */
    public long rows() {
        return seq;
    }

    void update(Connection connection) throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement(EvidenceRow.SELECT_HEADS + " WHERE seq > ? ORDER BY seq")) {
            select.setLong(1, seq);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    add(EvidenceRow.of(rows));
                }
            }
        }
        for (OutingTrail outing : outings.values()) {
            if (outing.isStale()) {
                outing.updateTail(connection, codec);
            }
        }
    }

    private void add(EvidenceRow row) {
        OutingTrail outing = outings.computeIfAbsent(row.outing(), OutingTrail::new);
        if (row.is(Block.Kind.SAMPLES)) {
            outing.blocks.add(
                    new TickIndex.Entry(row.reach().firstNumber(), row.reach().lastNumber(), row.seq()));
        } else if (!row.is(Block.Kind.SHAFT)) {
            takeEvents(outing, row);
        }
        seq = row.seq();
    }

    private static void takeEvents(OutingTrail outing, EvidenceRow row) {
        if (row.is(Block.Kind.END)) {
            outing.sealedEnd();
        }
        try {
            Block block = row.open();
            outing.sealed(EventCodec.decode(block.content(), block.count()));
        } catch (DamagedBlockException | IndexOutOfBoundsException | IllegalArgumentException damaged) {
            return; // what it held is left out; `verify` names it
        }
    }
}
