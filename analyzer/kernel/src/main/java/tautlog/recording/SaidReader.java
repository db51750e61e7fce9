package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.Said.SaidFinding;
import tautlog.recording.Said.SaidSecond;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroShift;

/** Reads what was said of one outing behind a mark, within one view of the file. */
final class SaidReader {
    private final Connection connection;
    private final OutingTrail outing;
    private final SpanCodec codec = new SpanCodec();
    private @Nullable TickIndex ticks;
    private @Nullable ThinnedTicks thinnedTicks;

    SaidReader(Connection connection, OutingTrail outing) {
        this.connection = connection;
        this.outing = outing;
    }

    Said read(SaidMark mark, int most) throws SQLException {
        if (outing.start().isEmpty()) {
            return new Said(List.of(), List.of()); // nothing can be dated or weighed
        }
        List<SaidSecond> seconds = new ArrayList<>();
        for (Second second : seconds(mark.second(), most)) {
            seconds.add(new SaidSecond(second, tickOf(second.firstNumber())));
        }
        return new Said(seconds, findings(mark.finding(), most));
    }

    private List<Second> seconds(long after, int most) throws SQLException {
        List<Second> seconds = new ArrayList<>();
        try (PreparedStatement select =
                connection.prepareStatement("SELECT id, block FROM seconds WHERE id > ? AND outing = ? ORDER BY id")) {
            select.setLong(1, outing.secondsRow);
            select.setInt(2, outing.index());
            try (ResultSet rows = select.executeQuery()) {
                while (seconds.size() < most && rows.next()) {
                    List<Second> row = open(EvidenceRow.bytes(rows, 2));
                    if (!row.isEmpty() && row.get(row.size() - 1).index() <= after) {
                        outing.secondsRow = seconds.isEmpty() ? rows.getLong(1) : outing.secondsRow;
                    }
                    addBehind(after, row, most, seconds);
                }
            }
        }
        addBehind(after, outing.tail.seconds, most, seconds);
        return seconds;
    }

    private static void addBehind(long after, List<Second> from, int most, List<Second> into) {
        for (Second second : from) {
            if (second.index() > after && into.size() < most) {
                into.add(second);
            }
        }
    }

    private List<Second> open(byte[] bytes) {
        try {
            Span span = new Span(outing.index(), 0);
            codec.append(Block.read(bytes, 0), span);
            return span.seconds;
        } catch (DamagedBlockException damaged) {
            return List.of(); // left out; `verify` names it
        }
    }

    private List<SaidFinding> findings(long after, int most) throws SQLException {
        List<SaidFinding> findings = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT id, kind, start, json, crc FROM finding WHERE id > ? AND outing = ? ORDER BY id LIMIT ?")) {
            select.setLong(1, after);
            select.setInt(2, outing.index());
            select.setInt(3, most);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    String kind = String.valueOf(rows.getString(2));
                    String json = String.valueOf(rows.getString(4));
                    if (FindingJson.crc(kind, rows.getLong(3), json) == rows.getLong(5)) {
                        findings.add(said(rows.getLong(1), FindingJson.read(kind, json)));
                    }
                }
            }
        }
        return findings;
    }

    /** Without their places in time. */
    List<Finding> findingsUpTo(long id) throws SQLException {
        List<Finding> findings = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT kind, start, json, crc FROM finding WHERE id <= ? AND outing = ? ORDER BY id")) {
            select.setLong(1, id);
            select.setInt(2, outing.index());
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    String kind = String.valueOf(rows.getString(1));
                    String json = String.valueOf(rows.getString(3));
                    if (FindingJson.crc(kind, rows.getLong(2), json) == rows.getLong(4)) {
                        findings.add(FindingJson.read(kind, json));
                    }
                }
            }
        }
        return findings;
    }

    private SaidFinding said(long id, Finding finding) throws SQLException {
        if (finding instanceof Finding.Stall stall) {
            return new SaidFinding(id, finding, stall.startTick(), stall.endTick(), OptionalInt.empty());
        }
        OptionalInt count = OptionalInt.empty();
        if (finding instanceof Finding.Shock) {
            count = countAt(finding.startNumber());
        }
        return new SaidFinding(id, finding, tickOf(finding.startNumber()), tickOf(finding.lastNumber()), count);
    }

    private OptionalInt countAt(long number) throws SQLException {
        try {
            int count = index().countAt(number);
            return OptionalInt.of(ZeroShift.shifted(instrument(), count, outing.shiftAt(number)));
        } catch (IllegalArgumentException absent) {
            return OptionalInt.empty();
        }
    }

    private long tickOf(long number) throws SQLException {
        try {
            if (outing.thinned()) {
                return thinnedTicks().tickOf(number);
            }
            return index().tickOf(number);
        } catch (IllegalArgumentException absent) {
            return nominal(number);
        }
    }

    /** By the nominal rate from where the outing's first readable sample was. */
    private long nominal(long number) throws SQLException {
        long first = outing.blocks.isEmpty() ? 0 : outing.blocks.get(0).first();
        OptionalLong at = OptionalLong.empty();
        try {
            at = OptionalLong.of(index().tickOf(first));
        } catch (IllegalArgumentException absent) {
            first = 0;
        }
        double perSample = instrument().tickHz() * 1_000.0 / instrument().rateMillihertz();
        return at.orElse(0) + Math.round((number - first) * perSample);
    }

    private ThinnedTicks thinnedTicks() throws SQLException {
        ThinnedTicks made = thinnedTicks;
        if (made == null) {
            made = ThinnedTicks.read(connection, outing.index(), instrument());
            thinnedTicks = made;
        }
        return made;
    }

    private TickIndex index() {
        TickIndex made = ticks;
        if (made == null) {
            made = TickIndex.over(connection, outing.index(), instrument(), outing.blocks, outing.tail.samples);
            ticks = made;
        }
        return made;
    }

    private Instrument instrument() {
        return outing.start().orElseThrow().instrument();
    }

    long behind(SaidMark mark) throws SQLException {
        long newest = outing.tail.seconds.isEmpty()
                ? newestSealed()
                : outing.tail.seconds.get(outing.tail.seconds.size() - 1).index();
        try (PreparedStatement select =
                connection.prepareStatement("SELECT count(*) FROM finding WHERE id > ? AND outing = ?")) {
            select.setLong(1, mark.finding());
            select.setInt(2, outing.index());
            try (ResultSet rows = select.executeQuery()) {
                return Math.max(0, newest - mark.second()) + (rows.next() ? rows.getLong(1) : 0);
            }
        }
    }

    private long newestSealed() throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement("SELECT block FROM seconds WHERE outing = ? ORDER BY id DESC LIMIT 1")) {
            select.setInt(1, outing.index());
            try (ResultSet rows = select.executeQuery()) {
                List<Second> row = rows.next() ? open(EvidenceRow.bytes(rows, 1)) : List.of();
                return row.isEmpty() ? -1 : row.get(row.size() - 1).index();
            }
        }
    }
}
