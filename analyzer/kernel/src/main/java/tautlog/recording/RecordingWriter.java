package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes a recording: one winch, one day, one or more outings. One thread.
 *
 * <p>{@link #open} finishes what a power cut left: tail rows of outings that are over are sealed into blocks. Such an outing
 * stays marked as cut off; {@link #interrupted} lists those that nobody has finished, {@link #resume} lets the findings
 * that are missing be added.
 */
public final class RecordingWriter implements AutoCloseable {
    private final Path file;
    private final String winch;
    private final WriterLock lock;
    private final RecordingRows rows;
    private final List<OutingJournal> open = new ArrayList<>();
    private int outings;

    private RecordingWriter(Path file, String winch, WriterLock lock, RecordingRows rows) {
        this.file = file;
        this.winch = winch;
        this.lock = lock;
        this.rows = rows;
    }

    /**
     * Opens {@code file}, making it when it is not there, under an id that no other recording has.
     *
     * @throws RecordingException as {@link #open(Path, String, String)}
     */
    public static RecordingWriter open(Path file, String winch) throws RecordingException {
        return open(file, winch, RecordingId.random());
    }

    /**
     * Opens {@code file}, making it when it is not there. An outing that a power cut left open stays marked so.
     *
     * @param id of a file that is made now, see {@link RecordingId}; one that is there keeps its own
     * @throws RecordingException if the file is no recording, is newer than this program, is of another winch, is damaged or
     *     is being written by somebody else
     */
    public static RecordingWriter open(Path file, String winch, String id) throws RecordingException {
        WriterLock lock = WriterLock.take(file);
        boolean opened = false;
        try {
            boolean hasLog = RecordingFile.hasLog(file);
            Connection connection = RecordingFile.openForWriting(file, winch, id);
            try {
                RecordingWriter writer = new RecordingWriter(file, winch, lock, new RecordingRows(file, connection));
                writer.recover(hasLog);
                opened = true;
                return writer;
            } finally {
                if (!opened) {
                    connection.close();
                }
            }
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        } finally {
            if (!opened) {
                lock.close();
            }
        }
    }

    private void recover(boolean hasLog) throws SQLException {
        rows.transaction();
        if (!hasLog) {
            rows.goOnWithoutLog();
        }
        rows.readChain();
        outings = rows.outings();
        for (int outing = 0; outing < outings; outing++) {
            Span left = rows.takeTail(outing);
            if (!left.isEmpty()) {
                rows.seal(left);
            }
        }
        rows.commit();
    }

    /** The outings, oldest first, that a power cut left open and {@link #resume} has not ended. */
    public List<Outing> interrupted() throws RecordingException {
        List<Outing> left = new ArrayList<>();
        try (Recording recording = Recording.over(file, rows.connection())) {
            for (Outing outing : recording.outings()) {
                boolean writing = open.stream().anyMatch(journal -> journal.outing() == outing.index());
                if (!outing.closed() && !writing) {
                    left.add(outing);
                }
            }
        }
        return left;
    }

    /**
     * Goes on with one of {@link #interrupted}: the findings and seconds that it lacks are appended, then {@link
     * OutingWriter#end} closes it. It stays marked as cut off.
     */
    public OutingWriter resume(Outing outing) throws RecordingException {
        try {
            return journal(outing.index(), rows.nextSpan(outing.index()), 1);
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        }
    }

    /** Begins the next outing; what {@code start} holds is on the disk when this returns. */
    public OutingWriter begin(OutingStart start) throws RecordingException {
        try {
            rows.transaction();
            rows.begin(outings, Event.start(winch, start));
            rows.commit();
        } catch (SQLException e) {
            throw rows.failed(e);
        }
        return journal(outings++, 1, 0);
    }

    private OutingJournal journal(int outing, int span, int cutOff) {
        OutingJournal journal = new OutingJournal(rows, outing, span, cutOff);
        open.add(journal);
        return journal;
    }

    /** Lets go of the file. What was not committed is gone; outings not ended stay open, as after a power cut. */
    @Override
    public void close() throws RecordingException {
        try (Connection connection = rows.connection()) {
            leaveLogMode(connection);
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        } finally {
            lock.close();
        }
    }

    /** A closed recording is one plain file that opens from a medium that cannot be written; a reader at work prevents it. */
    private static void leaveLogMode(Connection connection) {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = 0");
            WritingSign.takeDown(connection);
            try (ResultSet mode = statement.executeQuery("PRAGMA journal_mode = DELETE")) {
                mode.next();
            }
        } catch (SQLException e) {
            // somebody reads it: it stays in log mode, which loses nothing
            return;
        }
    }

    /** For tests: the connection that this writer uses. */
    Connection connection() {
        return rows.connection();
    }

    /** For tests: dies as a power cut would, without a word to SQLite's log. */
    void abandon() throws RecordingException {
        lock.close();
    }
}
