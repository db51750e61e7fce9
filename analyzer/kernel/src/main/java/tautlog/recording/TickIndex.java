package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import tautlog.sample.Instrument;
import tautlog.sample.SampleTicks;

/** Finds the tick of a sample by its number: which block, which frame, which sample of the frame. */
final class TickIndex {
    private static final Comparator<Entry> BY_NUMBER = Comparator.comparingLong(Entry::first);

    private final Connection connection;
    private final int outing;
    private final Instrument instrument;
    private final List<Entry> entries = new ArrayList<>();
    private final SpanCodec codec = new SpanCodec();
    private final FrameTable tail;
    private FrameTable before = new FrameTable();
    private FrameTable frames = new FrameTable();
    private int loaded = -1;

    /** A block of samples; {@code seq} 0 for the tail. */
    record Entry(long first, long last, long seq) {}

    private TickIndex(Connection connection, int outing, Instrument instrument, FrameTable tail) {
        this.connection = connection;
        this.outing = outing;
        this.instrument = instrument;
        this.tail = tail;
    }

    /** Over sealed blocks that are known already, and what the tail rows hold. */
    static TickIndex over(
            Connection connection, int outing, Instrument instrument, List<Entry> sealed, FrameTable tail) {
        TickIndex index = new TickIndex(connection, outing, instrument, tail);
        index.entries.addAll(sealed);
        index.addTail();
        return index;
    }

    static TickIndex read(Connection connection, Outing outing) throws SQLException {
        FrameTable tail = TailRows.read(new SqlRows(connection), outing.index(), new SpanCodec())
                .span()
                .samples;
        TickIndex index =
                new TickIndex(connection, outing.index(), outing.start().instrument(), tail);
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT first, last, seq FROM evidence WHERE outing = ? AND kind = 2 ORDER BY seq")) {
            select.setInt(1, outing.index());
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    index.entries.add(new Entry(rows.getLong(1), rows.getLong(2), rows.getLong(3)));
                }
            }
        }
        index.addTail();
        return index;
    }

    private void addTail() {
        if (tail.frames > 0) {
            entries.add(new Entry(tail.number[0], tail.nextNumber() - 1, 0));
        }
    }

    boolean reaches(long number) {
        return !entries.isEmpty() && number <= entries.get(entries.size() - 1).last();
    }

    long tickOf(long number) throws SQLException {
        int entry = entryOf(number);
        if (entry != loaded) {
            load(entry);
        }
        return tickIn(number);
    }

    private long tickIn(long number) {
        int frame = frameOf(frames, number);
        SampleTicks ticks = new SampleTicks(instrument);
        if (frame > 0) {
            feed(ticks, frames, frame - 1);
        } else if (before.frames > 0) {
            feed(ticks, before, before.frames - 1);
        }
        feed(ticks, frames, frame);
        return ticks.tickOf((int) (number - frames.number[frame]));
    }

    /**
     * The count of sample {@code number}, as it came.
     *
     * @throws IllegalArgumentException if no readable block holds that sample
     */
    int countAt(long number) throws SQLException {
        int entry = entryOf(number);
        FrameTable table = entries.get(entry).seq() == 0 ? tail : withCounts(entry);
        int frame = frameOf(table, number);
        return table.counts[table.from[frame] + (int) (number - table.number[frame])];
    }

    private FrameTable withCounts(int entry) throws SQLException {
        Span span = new Span(outing, 0);
        try (PreparedStatement select = connection.prepareStatement(EvidenceRow.SELECT + " WHERE seq = ?")) {
            select.setLong(1, entries.get(entry).seq());
            try (ResultSet rows = select.executeQuery()) {
                if (rows.next()) {
                    codec.append(EvidenceRow.of(rows).open(), span);
                }
            }
            return span.samples;
        } catch (DamagedBlockException e) {
            return new FrameTable(); // its samples are absent
        }
    }

    private int entryOf(long number) {
        int found = Collections.binarySearch(entries, new Entry(number, number, 0), BY_NUMBER);
        int entry = found >= 0 ? found : -found - 2;
        if (entry < 0) {
            throw absent(number);
        }
        return entry;
    }

    private int frameOf(FrameTable table, long number) {
        int frame = java.util.Arrays.binarySearch(table.number, 0, table.frames, number);
        frame = frame >= 0 ? frame : -frame - 2;
        if (frame < 0 || number >= table.number[frame] + table.length(frame)) {
            throw absent(number);
        }
        return frame;
    }

    private static void feed(SampleTicks ticks, FrameTable table, int frame) {
        ticks.frame(table.number[frame], table.tick[frame], table.length(frame));
    }

    private IllegalArgumentException absent(long number) {
        return new IllegalArgumentException("outing " + outing + " holds no readable sample with number " + number);
    }

    private void load(int entry) throws SQLException {
        before = entry == loaded + 1 ? frames : read(entry - 1);
        frames = read(entry);
        loaded = entry;
    }

    /** The frames of a block; none when it is damaged. */
    private FrameTable read(int entry) throws SQLException {
        FrameTable table = new FrameTable();
        if (entry < 0) {
            return table;
        }
        if (entries.get(entry).seq() == 0) {
            return tail;
        }
        try (PreparedStatement select = connection.prepareStatement(EvidenceRow.SELECT + " WHERE seq = ?")) {
            select.setLong(1, entries.get(entry).seq());
            try (ResultSet rows = select.executeQuery()) {
                if (rows.next()) {
                    codec.readFrames(EvidenceRow.of(rows).open(), table);
                }
            }
            return table;
        } catch (DamagedBlockException e) {
            return new FrameTable(); // its samples are absent
        }
    }
}
