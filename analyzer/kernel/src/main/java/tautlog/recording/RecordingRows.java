package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;

/**
 * The rows of a recording that is being written, and the end of its chain. Everything up to {@link #commit} becomes durable at
 * once or not at all.
 */
final class RecordingRows {
    private final Path file;
    private final Connection connection;
    private final SpanCodec codec = new SpanCodec();
    private final ByteWriter tailRow = new ByteWriter();
    private Chain chain = new Chain();
    private Chain committed = new Chain();
    private final WritingSign sign;

    RecordingRows(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
        this.sign = new WritingSign(connection);
    }

    Connection connection() {
        return connection;
    }

    /** Goes on where the chain of the file ends. */
    void readChain() throws SQLException {
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT link FROM evidence ORDER BY seq DESC LIMIT 1");
                ResultSet rows = select.executeQuery()) {
            chain = rows.next() ? new Chain(rows.getBytes(1)) : new Chain();
            committed = chain.copy();
        }
    }

    int outings() throws SQLException {
        return (int) number("SELECT coalesce(max(outing), -1) + 1 FROM evidence WHERE outing >= ?", 0);
    }

    int nextSpan(int outing) throws SQLException {
        return (int) number("SELECT coalesce(max(span), 0) + 1 FROM evidence WHERE outing = ?", outing);
    }

    private long number(String sql, int outing) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(sql)) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                rows.next();
                return rows.getLong(1);
            }
        }
    }

    /** What the tail rows of {@code outing} hold; damaged rows are set aside, they stay in the file. */
    Span takeTail(int outing) throws SQLException {
        TailRows tail = TailRows.read(new SqlRows(connection), outing, codec);
        try (PreparedStatement aside =
                connection.prepareStatement("UPDATE tail SET span = " + TailRows.Aside.STORED + " WHERE id = ?")) {
            for (long id : tail.damaged().keySet()) {
                aside.setLong(1, id);
                aside.executeUpdate();
            }
        }
        return tail.span();
    }

    /** What the log beside the file held is not here: says so for good. */
    void goOnWithoutLog() throws SQLException {
        sign.keepForGood();
    }

    void begin(int outing, Event start) throws SQLException {
        sign.putUp(outing);
        List<Event> events = List.of(start);
        chain.addEvents(Block.Kind.START, outing, 0, events);
        insert(codec.events(Block.Kind.START, outing, 0, events), new Reach(0, 0, 0, 0));
    }

    void end(int outing, int span, Event end, Reach reach) throws SQLException {
        List<Event> events = List.of(end);
        chain.addEvents(Block.Kind.END, outing, span, events);
        insert(codec.events(Block.Kind.END, outing, span, events), reach);
    }

    /** Deletes the tail rows that held {@code span}, then writes it as blocks: into the pages that are free now, so that the file stays smaller. */
    void seal(Span span) throws SQLException {
        try (PreparedStatement delete = connection.prepareStatement("DELETE FROM tail WHERE outing = ? AND span = ?")) {
            delete.setInt(1, span.outing);
            delete.setInt(2, span.index);
            delete.executeUpdate();
        }
        Reach reach = Reach.of(span);
        for (Block block : codec.evidence(span)) {
            SpanCodec.extend(chain, span, block.kind());
            insert(block, reach);
        }
        for (Block block : codec.seconds(span)) {
            try (PreparedStatement insert =
                    connection.prepareStatement("INSERT INTO seconds (outing, span, block) VALUES (?, ?, ?)")) {
                insert.setInt(1, span.outing);
                insert.setInt(2, span.index);
                insert.setBytes(3, block.bytes());
                insert.executeUpdate();
            }
        }
    }

    private void insert(Block block, Reach reach) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO evidence"
                + " (outing, span, kind, first, last, tick, last_tick, count, link, block)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            insert.setInt(1, block.outing());
            insert.setInt(2, block.span());
            insert.setInt(3, block.kind().code());
            insert.setLong(4, reach.firstNumber());
            insert.setLong(5, reach.lastNumber());
            insert.setLong(6, reach.firstTick());
            insert.setLong(7, reach.lastTick());
            insert.setInt(8, block.count());
            insert.setBytes(9, chain.link());
            insert.setBytes(10, block.bytes());
            insert.executeUpdate();
        }
    }

    /** Writes a piece of a span that is not full yet. */
    void tail(Span part) throws SQLException {
        tailRow.clear();
        List<Block> blocks = new ArrayList<>(codec.evidence(part));
        blocks.addAll(codec.seconds(part));
        blocks.forEach(block -> tailRow.raw(block.bytes(), 0, block.size()));
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO tail (outing, span, blocks) VALUES (?, ?, ?)")) {
            insert.setInt(1, part.outing);
            insert.setInt(2, part.index);
            insert.setBytes(3, tailRow.toBytes());
            insert.executeUpdate();
        }
    }

    void finding(int outing, Finding finding) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO finding (outing, kind, start, json, crc) VALUES (?, ?, ?, ?, ?)")) {
            String json = FindingJson.write(finding);
            insert.setInt(1, outing);
            insert.setString(2, finding.kind());
            insert.setLong(3, finding.startNumber());
            insert.setString(4, json);
            insert.setLong(5, FindingJson.crc(finding.kind(), finding.startNumber(), json));
            insert.executeUpdate();
        }
    }

    /**
     * Begins what {@link #commit} makes durable.
     *
     * <p>Transactions are begun and ended in so many words: on a full disk SQLite ends one by itself, and what the driver
     * would do next it would do outside of any.
     */
    void transaction() throws SQLException {
        execute("BEGIN IMMEDIATE");
    }

    void commit() throws SQLException {
        execute("COMMIT");
        committed = chain.copy();
        sign.foldIfNew();
    }

    private void rollback() throws SQLException {
        chain = committed.copy();
        execute("ROLLBACK");
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Undoes what was not committed, says what happened. */
    RecordingException failed(SQLException e) {
        RecordingException told = RecordingFile.explain(file, e);
        try {
            rollback();
        } catch (SQLException again) {
            told.addSuppressed(again); // SQLite has undone it by itself
        }
        return told;
    }

    /** The chain up to the last commit, without what stands in tail rows. */
    Chain chain() {
        return committed.copy();
    }
}
