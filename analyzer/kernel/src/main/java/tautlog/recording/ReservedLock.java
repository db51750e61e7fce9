package tautlog.recording;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/**
 * Keeps every other SQLite program from changing a file, without a change to it: the lock that SQLite calls reserved, which {@code BEGIN
 * IMMEDIATE} takes. Readers are let in. The system drops it when the program dies; nothing is left beside the file then.
 *
 * <p>{@link WriterLock} keeps only writers out that ask for it. One thread.
 */
final class ReservedLock implements AutoCloseable {
    /** Chosen: longer than a small change takes, short for who waits for the refusal. */
    private static final int WAIT_MILLIS = 1_000;

    private final Connection connection;

    private ReservedLock(Connection connection) {
        this.connection = connection;
    }

    /**
     * Takes it on a file that is not in log mode: in that, changes stand beside the file, and who waits for the lock may go on with the
     * old one when another takes its place. Without log mode SQLite refuses who waited, as the file it had opened has lost its name.
     *
     * @throws RecordingException if another program is changing the file, or turned it to log mode, or this user may not write it
     */
    static ReservedLock take(Path file) throws SQLException, RecordingException {
        if (!Files.isWritable(file)) {
            throw RecordingException.ofThisFile(
                    file + ": may not be written by this user, so others cannot be kept from"
                            + " changing it meanwhile. Give this user write permission for it, if it is to be replaced.");
        }
        ReservedLock lock = new ReservedLock(connect(file));
        try {
            reserve(file, lock.connection);
            return lock;
        } catch (SQLException | RecordingException | RuntimeException | Error e) {
            lock.close();
            throw e;
        }
    }

    /** Makes no file where none is any more. */
    static Connection connect(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(WAIT_MILLIS);
        config.resetOpenMode(SQLiteOpenMode.CREATE);
        return OpenConnections.open(file, () -> config.createConnection(RecordingFile.url(file)));
    }

    private static void reserve(Path file, Connection connection) throws SQLException, RecordingException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            try (ResultSet mode = statement.executeQuery("PRAGMA journal_mode")) {
                if (mode.next() && mode.getString(1).equals("wal")) {
                    throw RecordingException.ofThisFile(
                            file + ": was opened for writing by another program meanwhile. Stop that program first.");
                }
            }
        }
    }

    /** Lets go of it. What was done under it stays done, even where this fails. */
    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            return; // the lock is held until the program ends; that is no failure of what was done under it
        }
    }
}
