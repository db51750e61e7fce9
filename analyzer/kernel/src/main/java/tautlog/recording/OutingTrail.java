package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tautlog.sample.ClockFix;
import tautlog.sample.OutingClock;

/**
 * What is known of one outing from reading to reading. See {@link RecordingTrail}.
 *
 * <p>{@link #utcMicros} dates a tick by the fixes up to it, or the first one there is: so it gives the same time whenever it
 * is asked, and differs by some milliseconds from a report, which knows the fixes behind it too.
 */
public final class OutingTrail {
    private final int index;
    final List<TickIndex.Entry> blocks = new ArrayList<>();
    final List<Zero> zeros = new ArrayList<>();
    private final List<ClockFix> sealedFixes = new ArrayList<>();
    private List<ClockFix> fixes = new ArrayList<>();
    private int clockFixes;
    private @Nullable OutingClock clock;
    private @Nullable OutingStart start;
    private boolean closed;
    private boolean thinned;
    private boolean stale;
    private long tailRow;
    Span tail;
    /** Seconds of rows up to this one are known to lie at or before the mark that was read with last. */
    long secondsRow;

    /** From sample {@code number} on the zero is moved by {@code shift} counts. */
    record Zero(long number, int shift) {}

    OutingTrail(int index) {
        this.index = index;
        this.tail = new Span(index, 0);
    }

    /** 0 for the recording's first. */
    public int index() {
        return index;
    }

    /** Empty when it cannot be read. */
    public Optional<OutingStart> start() {
        return Optional.ofNullable(start);
    }

    /** True when nothing can follow. */
    public boolean closed() {
        return closed;
    }

    /** Whether its readings were taken out. */
    boolean thinned() {
        return thinned;
    }

    /** Whether any clock fix is known. */
    public boolean hasClock() {
        return !fixes.isEmpty();
    }

    /** UTC in microseconds since 1970 at {@code tick}; empty while no clock is known. */
    public OptionalLong utcMicros(long tick) {
        OutingStart known = start;
        if (known == null || fixes.isEmpty()) {
            return OptionalLong.empty();
        }
        int count = 1;
        while (count < fixes.size() && fixes.get(count).tick() <= tick) {
            count++;
        }
        OutingClock now = clock;
        if (now == null || count != clockFixes) {
            now = OutingClock.of(fixes.subList(0, count), known.instrument().tickHz());
            clock = now;
            clockFixes = count;
        }
        return now.utcMicros(tick);
    }

    /** Whether {@link #updateTail} has something to do. */
    boolean isStale() {
        return stale || !closed || !tail.isEmpty();
    }

    /** Takes what a sealed block of events, start or end holds. */
    void sealed(List<Event> events) {
        stale = true;
        for (Event event : events) {
            switch (event.type()) {
                case START -> start = event.asStart();
                case CLOCK -> sealedFixes.add(fix(event));
                case ZERO -> zeros.add(zero(event));
                case THINNED -> thinned = true;
                default -> {}
            }
        }
    }

    void sealedEnd() {
        closed = true;
    }

    /**
     * Reads the tail rows that came since; all anew when what was there before is sealed. The rows of one outing belong to one span,
     * and their ids rise while it is not sealed.
     */
    void updateTail(Connection connection, SpanCodec codec) throws SQLException {
        int span = firstSpan(connection);
        if (span != tail.index) {
            tail = new Span(index, span);
            tailRow = 0;
        }
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT id, blocks FROM tail WHERE id > ? AND outing = ? AND span >= 0 ORDER BY id")) {
            select.setLong(1, tailRow);
            select.setInt(2, index);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    tailRow = rows.getLong(1);
                    TailRows.append(tailRow, EvidenceRow.bytes(rows, 2), codec, tail, new TreeMap<>());
                }
            }
        }
        stale = false;
        fixes = new ArrayList<>(sealedFixes);
        for (Event event : tail.events) {
            if (event.type() == Event.Type.CLOCK) {
                fixes.add(fix(event));
            }
        }
    }

    /** 0, which no span of samples has, when there is no tail. */
    private int firstSpan(Connection connection) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT span FROM tail WHERE outing = ? AND span >= 0 ORDER BY id LIMIT 1")) {
            select.setInt(1, index);
            try (ResultSet rows = select.executeQuery()) {
                return rows.next() ? rows.getInt(1) : 0;
            }
        }
    }

    /** By how many counts the zero is moved at sample {@code number}. */
    int shiftAt(long number) {
        int shift = 0;
        for (Zero zero : zeros) {
            shift = zero.number() <= number ? zero.shift() : shift;
        }
        for (Event event : tail.events) {
            if (event.type() == Event.Type.ZERO && zero(event).number() <= number) {
                shift = zero(event).shift();
            }
        }
        return shift;
    }

    private static ClockFix fix(Event event) {
        return new ClockFix(event.numbers()[0], event.numbers()[1]);
    }

    private static Zero zero(Event event) {
        return new Zero(event.numbers()[0], (int) event.numbers()[1]);
    }
}
