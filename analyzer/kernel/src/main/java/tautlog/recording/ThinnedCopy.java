package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/** Writes a recording again, with nothing but the digest of each block of samples of some outings, and a row that says so for each. */
final class ThinnedCopy {
    private static final String INSERT = "INSERT INTO evidence (seq, outing, span, kind, first, last, tick, last_tick,"
            + " count, link, block) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private final Connection connection;
    private final Set<Integer> outings = new HashSet<>();
    private final SpanCodec codec = new SpanCodec();
    private Chain chain = new Chain();
    private long lastSeq;

    private ThinnedCopy(Connection connection, List<Outing> outings) {
        this.connection = connection;
        outings.forEach(outing -> this.outings.add(outing.index()));
    }

    /** @throws RecordingException if a block of {@code outings} is not what the chain says */
    static void write(Path file, Path copy, List<Outing> outings, OptionalLong utcMicros)
            throws SQLException, RecordingException {
        try (Connection connection = RecordingFile.beginCopy(file, copy)) {
            ThinnedCopy written = new ThinnedCopy(connection, outings);
            written.others();
            written.evidence();
            for (Outing outing : outings) {
                written.say(outing, utcMicros);
            }
            try (Statement statement = connection.createStatement()) {
                statement.execute("COMMIT");
            }
        } catch (DamagedBlockException e) {
            throw new RecordingException(file + ": is not thinned, it is damaged: " + e.getMessage(), e);
        }
    }

    private void others() throws SQLException {
        for (String table : RecordingFile.tables(connection)) {
            if (!table.equals("evidence")) {
                try (Statement statement = connection.createStatement()) {
                    statement.execute("INSERT INTO main." + table + " SELECT * FROM old." + table + " ORDER BY rowid");
                }
            }
        }
    }

    private void evidence() throws SQLException, DamagedBlockException {
        try (PreparedStatement select = connection.prepareStatement(
                        EvidenceRow.SELECT.replace("FROM evidence", "FROM old.evidence") + " ORDER BY seq");
                ResultSet rows = select.executeQuery();
                PreparedStatement insert = connection.prepareStatement(INSERT)) {
            while (rows.next()) {
                EvidenceRow row = EvidenceRow.of(rows);
                boolean isChosen = row.is(Block.Kind.SAMPLES) && outings.contains(row.outing());
                insert(insert, row, isChosen ? stub(row) : row.bytes());
                chain = new Chain(row.link());
                lastSeq = row.seq();
            }
        }
    }

    /** Checks the block against its link before it lets go of it. */
    private byte[] stub(EvidenceRow row) throws DamagedBlockException {
        Block block = row.open();
        Span span = new Span(row.outing(), row.span());
        codec.append(block, span);
        Block stub = block.thinned(chain.digest(span.samples));
        chain.addThinned(stub);
        if (!Arrays.equals(chain.link(), row.link())) {
            throw new DamagedBlockException(row.place() + ": its link does not follow from the row before");
        }
        return stub.bytes();
    }

    private static void insert(PreparedStatement insert, EvidenceRow row, byte[] bytes) throws SQLException {
        insert.setLong(1, row.seq());
        insert.setInt(2, row.outing());
        insert.setInt(3, row.span());
        insert.setInt(4, row.kind());
        insert.setLong(5, row.reach().firstNumber());
        insert.setLong(6, row.reach().lastNumber());
        insert.setLong(7, row.reach().firstTick());
        insert.setLong(8, row.reach().lastTick());
        insert.setInt(9, row.count());
        insert.setBytes(10, row.link());
        insert.setBytes(11, bytes);
        insert.executeUpdate();
    }

    private void say(Outing outing, OptionalLong utcMicros) throws SQLException {
        int index = outing.index();
        long blocks = count("SELECT count(*) FROM main.evidence WHERE kind = 2 AND outing = ", index);
        int span = (int) count("SELECT max(span) + 1 FROM main.evidence WHERE outing = ", index);
        List<Event> event = List.of(
                Event.thinned(utcMicros.orElse(0), blocks, outing.samples(), ThinnedRest.digest(connection, index)));
        chain.addEvents(Block.Kind.THINNING, index, span, event);
        Block block = codec.events(Block.Kind.THINNING, index, span, event);
        EvidenceRow row = new EvidenceRow(
                ++lastSeq,
                index,
                span,
                Block.Kind.THINNING.code(),
                new Reach(0, 0, 0, 0),
                block.count(),
                chain.link(),
                block.bytes());
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert(insert, row, row.bytes());
        }
    }

    private long count(String sql, int outing) throws SQLException {
        return RecordingFile.query(connection, sql + outing);
    }
}
