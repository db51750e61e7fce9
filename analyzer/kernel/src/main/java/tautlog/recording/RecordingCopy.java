package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/**
 * Makes a copy of a recording that is whole by itself, also while it is being written: one plain file with all that was
 * committed when the copying began, rows and links as they are, pages packed anew. The writer is never held up; while a copy is
 * being made, its log cannot be folded in and grows.
 */
public final class RecordingCopy {
    /** What stands behind a copy's name in that of its journal, while the copy is being made. */
    public static final String JOURNAL = "-journal";

    private RecordingCopy() {}

    /**
     * Copies {@code source} to {@code target}; what a copying that was cut off left there is replaced. After a failure it is worth
     * nothing. It is not flushed to the disk: the caller does that.
     *
     * @throws RecordingException if {@code source} cannot be read
     * @throws IOException if {@code target} cannot be written
     */
    public static void write(Path source, Path target) throws IOException {
        boolean hadLog = RecordingFile.hasLog(source);
        try (Connection connection = RecordingFile.openForReading(source)) {
            remove(target);
            connection.setAutoCommit(true); // VACUUM makes its own view of the file
            try (Statement unflushed = connection.createStatement()) {
                unflushed.execute("PRAGMA synchronous = OFF");
            }
            try (PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
                copy.setString(1, target.toAbsolutePath().toString());
                copy.execute();
            }
            if (hadLog) {
                takeSignDown(target);
            }
        } catch (SQLException e) {
            throw refusal(source, target, e);
        }
    }

    /** Takes away a copy that was not finished, and the journal that SQLite would else apply to the next one. */
    public static void remove(Path target) throws IOException {
        Files.deleteIfExists(journal(target));
        Files.deleteIfExists(target);
    }

    static Path journal(Path target) {
        return target.resolveSibling(target.getFileName() + JOURNAL);
    }

    /** The copy holds what stood in the log, so it must not say that it lacks it. */
    private static void takeSignDown(Path target) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.MEMORY);
        try (Connection connection =
                        OpenConnections.open(target, () -> config.createConnection(RecordingFile.url(target)));
                Statement statement = connection.createStatement()) {
            if (RecordingFile.query(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'begun'") > 0) {
                statement.execute("DELETE FROM begun WHERE lost = 0");
            }
        }
    }

    private static IOException refusal(Path source, Path target, SQLException e) {
        int code = RecordingFile.primary(e);
        boolean readingFailed = code == SQLiteErrorCode.SQLITE_CORRUPT.code
                || code == SQLiteErrorCode.SQLITE_NOTADB.code
                || code == SQLiteErrorCode.SQLITE_BUSY.code
                || code == SQLiteErrorCode.SQLITE_LOCKED.code;
        return readingFailed
                ? RecordingFile.explain(source, e)
                : new IOException(target + ": the copy cannot be written (" + e.getMessage() + ")", e);
    }
}
