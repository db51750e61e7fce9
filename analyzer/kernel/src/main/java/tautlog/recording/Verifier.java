package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Walks every row of a recording: checksum, decoding, link, index; then what is no evidence, then SQLite's own structure. */
final class Verifier {
    private final Connection connection;
    private final SpanCodec codec = new SpanCodec();
    private final List<Damage> damages = new ArrayList<>();
    private final List<Verification.Gap> gaps = new ArrayList<>();
    private final Map<Integer, Long> nextNumbers = new HashMap<>();
    private final Map<Integer, Outing> outings = new HashMap<>();
    private final ThinnedBlocks thinned = new ThinnedBlocks();
    private Chain chain = new Chain();
    private long blocks;
    private long samples;
    private long lastSeq;

    Verifier(Connection connection) {
        this.connection = connection;
    }

    /** The link that the chain ends with, tail rows as if sealed now. */
    static String lastLink(Connection connection) throws SQLException {
        Chain chain = new Chain();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT link FROM evidence ORDER BY seq DESC LIMIT 1");
                ResultSet rows = select.executeQuery()) {
            if (rows.next()) {
                chain = new Chain(EvidenceRow.bytes(rows, 1));
            }
        }
        SpanCodec codec = new SpanCodec();
        for (int outing : outingsWithTail(connection)) {
            SpanCodec.extend(
                    chain, TailRows.read(new SqlRows(connection), outing, codec).span());
        }
        return chain.hex();
    }

    private static List<Integer> outingsWithTail(Connection connection) throws SQLException {
        List<Integer> list = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(
                        "SELECT DISTINCT outing FROM tail WHERE span >= 0 ORDER BY outing");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                list.add(rows.getInt(1));
            }
        }
        return list;
    }

    /** @param missing outings of which the file itself says that rows are missing */
    Verification run(List<LostOuting> missing) throws SQLException {
        Outings all = Outings.read(new SqlRows(connection));
        List<Outing> list = all.list();
        list.forEach(outing -> outings.put(outing.index(), outing));
        verifyRows();
        thinned.check(connection, (outing, reason) -> addLoose(outing, "samples blocks", reason));
        verifyTails();
        verifySpoken(all.lost());
        verifyStructure();
        List<LostOuting> lost = new ArrayList<>(all.lost());
        lost.addAll(missing);
        return new Verification(
                winch(), list, lost, blocks, samples, thinned.said(), damages, gaps, lastLink(connection));
    }

    private void verifyRows() throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(EvidenceRow.SELECT + " ORDER BY seq");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                verify(EvidenceRow.of(rows));
            }
        }
    }

    private void verify(EvidenceRow row) {
        blocks++;
        if (row.seq() != lastSeq + 1) {
            damages.add(row.missingBefore(
                    lastSeq + 1, time(row.outing(), row.reach().firstTick())));
        }
        lastSeq = row.seq();
        try {
            verifyContent(row);
            if (!Arrays.equals(chain.link(), row.link())) {
                damages.add(damage(
                        row, "its link does not follow from the row before: one of them was changed after sealing"));
            }
        } catch (DamagedBlockException e) {
            damages.add(damage(row, String.valueOf(e.getMessage())));
        }
        // go on from what is stored, so that one damage is told once
        chain = new Chain(row.link().length == 32 ? row.link() : new byte[32]);
    }

    private void verifyContent(EvidenceRow row) throws DamagedBlockException {
        Block block = row.open();
        if (block.isThinned()) {
            chain.addThinned(block);
            thinned.found(block);
            requireOrder(block, row.reach());
            nextNumbers.put(row.outing(), row.reach().lastNumber() + 1);
            return;
        }
        Span span = new Span(row.outing(), row.span());
        codec.append(block, span);
        SpanCodec.extend(chain, span, block.kind());
        span.events.forEach(event -> thinned.event(row.outing(), event));
        if (block.kind() == Block.Kind.SAMPLES) {
            requireReach(Reach.of(span), row.reach());
            samples += span.samples.samples();
            findGaps(row.outing(), span.samples);
        }
    }

    private static void requireReach(Reach decoded, Reach index) throws DamagedBlockException {
        if (!decoded.equals(index)) {
            throw new DamagedBlockException("the file's index of it says " + index + ", it holds " + decoded);
        }
    }

    /** What can still be checked of the index of a block whose readings are gone: no number is missing in it. */
    private static void requireOrder(Block block, Reach index) throws DamagedBlockException {
        if (index.firstNumber() != block.first() || index.lastNumber() != block.first() + block.count() - 1) {
            throw new DamagedBlockException("the file's index of it says " + index + ", it held " + block.count()
                    + " samples from " + block.first() + " on");
        }
    }

    private void findGaps(int outing, FrameTable table) {
        for (int i = 0; i < table.frames; i++) {
            Long expected = nextNumbers.get(outing);
            long missing = expected == null ? 0 : table.number[i] - expected;
            if (missing > 0) {
                gaps.add(new Verification.Gap(
                        outing, table.number[i] - missing - 1, missing, time(outing, table.tick[i])));
            }
            nextNumbers.put(outing, table.number[i] + table.length(i));
        }
    }

    private String time(int outing, long tick) {
        Outing known = outings.get(outing);
        return known == null ? "time unknown" : EvidenceRow.time(known.utcMicros(tick));
    }

    private Damage damage(EvidenceRow row, String reason) {
        boolean covers = row.is(Block.Kind.SAMPLES);
        return new Damage(
                row.outing(),
                row.place(),
                covers ? row.reach().firstNumber() : 0,
                covers ? row.reach().lastNumber() : -1,
                time(row.outing(), row.reach().firstTick()),
                reason);
    }

    private void verifyTails() throws SQLException {
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT id, outing, span, blocks FROM tail ORDER BY id");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                verifyTail(rows.getLong(1), rows.getInt(2), rows.getInt(3), EvidenceRow.bytes(rows, 4));
            }
        }
    }

    private void verifyTail(long id, int outing, int span, byte[] bytes) {
        Span part = new Span(outing, span);
        try {
            for (int at = 0; at < bytes.length; ) {
                Block block = Block.read(bytes, at);
                if (block.outing() != outing) {
                    throw new DamagedBlockException("it stands in a row of another outing");
                }
                codec.append(block, part);
                at += block.size();
            }
            samples += part.samples.samples();
            findGaps(outing, part.samples);
        } catch (DamagedBlockException e) {
            addLoose(outing, "tail row " + id, String.valueOf(e.getMessage()));
        }
    }

    private void addLoose(int outing, String place, String reason) {
        Outing known = outings.get(outing);
        String time = known == null ? "time unknown" : time(outing, known.lastTick());
        damages.add(new Damage(outing, place, 0, -1, time, reason));
    }

    private void verifySpoken(List<LostOuting> lost) throws SQLException {
        for (int outing : SpokenRows.outings(connection)) {
            if (!outings.containsKey(outing) && lost.stream().noneMatch(one -> one.index() == outing)) {
                addLoose(outing, "findings and seconds", "they belong to an outing that is not here");
            }
            SpokenRows.findings(connection, outing, what -> spoken(outing, what));
            SpokenRows.seconds(connection, outing, what -> spoken(outing, what));
        }
    }

    private void spoken(int outing, String what) {
        int colon = what.indexOf(": ");
        addLoose(outing, what.substring(0, colon), what.substring(colon + 2));
    }

    private void verifyStructure() throws SQLException {
        List<String> lines = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA integrity_check(20)")) {
            while (rows.next()) {
                lines.addAll(String.valueOf(rows.getString(1)).lines().toList());
            }
        }
        complaints(lines).forEach(line -> damages.add(new Damage(-1, "file structure", 0, -1, "time unknown", line)));
    }

    /**
     * What of SQLite's answer is damage: all but its word for none, and but the lines that name the database above what is told of it; those
     * count where they stand alone.
     */
    static List<String> complaints(List<String> answer) {
        List<String> all = answer.stream().filter(line -> !line.equals("ok")).toList();
        List<String> told = all.stream().filter(line -> !line.startsWith("***")).toList();
        return told.isEmpty() ? all : told;
    }

    private String winch() throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("SELECT winch FROM recording");
                ResultSet rows = select.executeQuery()) {
            return rows.next() ? rows.getString(1) : "";
        }
    }
}
