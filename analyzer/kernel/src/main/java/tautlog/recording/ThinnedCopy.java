package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/** Writes a recording again, with nothing but the digest of each block of samples of some outings, and a row that says so for each. */
final class ThinnedCopy {
    private final Connection connection;
    private final CopiedRows rows;
    private final Set<Integer> outings = new HashSet<>();
    private final SpanCodec codec = new SpanCodec();
    private Chain chain = new Chain();
    private long lastSeq;

    private ThinnedCopy(Connection connection, List<Outing> outings) {
        this.connection = connection;
        this.rows = new CopiedRows(connection);
        outings.forEach(outing -> this.outings.add(outing.index()));
    }

    /** @throws RecordingException if a block of {@code outings} is not what the chain says */
    static void write(Path file, Path copy, List<Outing> outings, OptionalLong utcMicros)
            throws SQLException, RecordingException {
        try (Connection connection = RecordingFile.beginCopy(file, copy, RecordingFile.PAGE_SIZE)) {
            ThinnedCopy written = new ThinnedCopy(connection, outings);
            written.rows.tablesBut(Set.of("evidence"));
            written.rows.evidence(written::recode);
            for (Outing outing : outings) {
                written.say(outing, utcMicros);
            }
            written.rows.commit();
        } catch (DamagedBlockException e) {
            throw new RecordingException(file + ": is not thinned, it is damaged: " + e.getMessage(), e);
        }
    }

    private byte[] recode(EvidenceRow row) throws DamagedBlockException {
        boolean isChosen = row.is(Block.Kind.SAMPLES) && outings.contains(row.outing());
        byte[] bytes = isChosen ? stub(row) : row.bytes();
        chain = new Chain(row.link());
        lastSeq = row.seq();
        return bytes;
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

    private void say(Outing outing, OptionalLong utcMicros) throws SQLException {
        int index = outing.index();
        long blocks = count("SELECT count(*) FROM main.evidence WHERE kind = 2 AND outing = ", index);
        int span = (int) count("SELECT max(span) + 1 FROM main.evidence WHERE outing = ", index);
        List<Event> event = List.of(
                Event.thinned(utcMicros.orElse(0), blocks, outing.samples(), ThinnedRest.digest(connection, index)));
        chain.addEvents(Block.Kind.THINNING, index, span, event);
        Block block = codec.events(Block.Kind.THINNING, index, span, event);
        rows.add(new EvidenceRow(
                ++lastSeq,
                index,
                span,
                Block.Kind.THINNING.code(),
                new Reach(0, 0, 0, 0),
                block.count(),
                chain.link(),
                block.bytes()));
    }

    private long count(String sql, int outing) throws SQLException {
        return RecordingFile.query(connection, sql + outing);
    }
}
