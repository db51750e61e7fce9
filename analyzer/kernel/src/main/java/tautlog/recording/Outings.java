package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import tautlog.sample.ClockFix;
import tautlog.sample.Tally;

/** Sums up the outings of a recording from its rows, without decoding samples; those whose start is lost apart. */
final class Outings {
    private final Map<Integer, Summary> summaries = new TreeMap<>();

    /** What is known of one outing so far. */
    private static final class Summary {
        @org.jspecify.annotations.Nullable
        OutingStart start;

        String startReason = "its start block is missing";
        long samples;
        boolean samplesAreKnown = true;
        long firstNumber;
        long lastNumber;
        long firstTick;
        long lastTick;
        boolean ended;
        boolean closed;
        boolean thinned;
        final List<ClockFix> fixes = new ArrayList<>();
        Tally tally = Tally.NONE;

        void reach(long count, Reach reach) {
            if (samples == 0) {
                firstNumber = reach.firstNumber();
                firstTick = reach.firstTick();
            }
            samples += count;
            lastNumber = reach.lastNumber();
            lastTick = reach.lastTick();
        }

        void events(List<Event> events) {
            for (Event event : events) {
                switch (event.type()) {
                    case START -> start = event.asStart();
                    case CLOCK -> fixes.add(new ClockFix(event.numbers()[0], event.numbers()[1]));
                    case TALLY -> tally = event.asTally();
                    case END -> {
                        closed = true;
                        ended = event.numbers()[0] == 0;
                    }
                    default -> {}
                }
            }
        }
    }

    private Outings() {}

    static List<Outing> read(Connection connection) throws SQLException {
        return readAll(connection).list();
    }

    static Outings readAll(Connection connection) throws SQLException {
        Outings outings = new Outings();
        outings.readEvidence(connection);
        outings.findTails(connection);
        outings.readTails(connection);
        return outings;
    }

    private void readEvidence(Connection connection) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(
                        "SELECT seq, outing, span, kind, first, last, tick, last_tick, count, link,"
                                + " CASE WHEN kind IN (2, 3) THEN NULL ELSE block END FROM evidence ORDER BY seq");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                add(rows);
            }
        }
    }

    /** Most rows are samples and shaft, of which a few columns say enough. */
    private void add(ResultSet row) throws SQLException {
        Summary summary = summaries.computeIfAbsent(row.getInt(2), key -> new Summary());
        int kind = row.getInt(4);
        int count = row.getInt(9);
        if (kind == Block.Kind.SAMPLES.code()) {
            long[] reach = EvidenceRow.numbers(row, 5, 4);
            summary.reach(count, new Reach(reach[0], reach[1], reach[2], reach[3]));
        } else if (kind != Block.Kind.SHAFT.code()) {
            addEvents(EvidenceRow.of(row), summary);
        }
        summary.thinned |= kind == Block.Kind.THINNING.code();
        summary.samplesAreKnown &= count >= 0 && Block.Kind.isKnown(kind);
    }

    private static void addEvents(EvidenceRow row, Summary summary) {
        try {
            Block block = row.open();
            summary.events(EventCodec.decode(block.content(), block.count()));
        } catch (DamagedBlockException | IndexOutOfBoundsException | IllegalArgumentException e) {
            summary.closed |= row.is(Block.Kind.END); // what it held is lost, that it was there is not
            if (row.is(Block.Kind.START)) {
                summary.startReason = "its start block is damaged: " + String.valueOf(e.getMessage());
            }
        }
    }

    /** Outings of which nothing but tail rows is left. */
    private void findTails(Connection connection) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("SELECT DISTINCT outing FROM tail");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                summaries.computeIfAbsent(rows.getInt(1), key -> new Summary());
            }
        }
    }

    private void readTails(Connection connection) throws SQLException {
        SpanCodec codec = new SpanCodec();
        for (Map.Entry<Integer, Summary> entry : summaries.entrySet()) {
            if (!entry.getValue().closed) {
                TailRows tail = TailRows.read(connection, entry.getKey(), codec);
                Span span = tail.span();
                entry.getValue().samplesAreKnown &= tail.damaged().isEmpty();
                if (span.samples.frames > 0) {
                    entry.getValue().reach(span.samples.samples(), Reach.of(span));
                }
                entry.getValue().events(span.events);
            }
        }
    }

    /** Those whose start can be read, oldest first. */
    List<Outing> list() {
        List<Outing> list = new ArrayList<>();
        summaries.forEach((index, s) -> {
            if (s.start != null) {
                list.add(new Outing(
                        index,
                        s.start,
                        s.samples,
                        s.firstNumber,
                        s.lastNumber,
                        s.firstTick,
                        s.lastTick,
                        s.ended,
                        s.closed,
                        s.thinned,
                        s.fixes,
                        s.tally));
            }
        });
        return list;
    }

    /** Those whose start cannot be read, oldest first. */
    List<LostOuting> lost() {
        List<LostOuting> lost = new ArrayList<>();
        summaries.forEach((index, s) -> {
            if (s.start == null) {
                lost.add(new LostOuting(
                        index, s.startReason, s.samplesAreKnown ? OptionalLong.of(s.samples) : OptionalLong.empty()));
            }
        });
        return lost;
    }
}
