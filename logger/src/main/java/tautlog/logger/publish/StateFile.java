package tautlog.logger.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import tautlog.recording.SaidMark;

/**
 * What a publisher remembers from one start to the next: {@code state.db} beside the recordings, an SQLite file. No evidence: when
 * it is lost, everything is published once more and consumers drop the repeats.
 *
 * <p>One that is damaged is put aside. One that cannot be opened or written for another reason stays as it is and costs repeats only;
 * the caller goes on in memory.
 */
final class StateFile implements AutoCloseable {
    /** Chosen: enough to see what is wrong, never a full disk. */
    private static final int KEPT_REFUSED = 1_000;

    private static final Set<SQLiteErrorCode> DAMAGE =
            Set.of(SQLiteErrorCode.SQLITE_CORRUPT, SQLiteErrorCode.SQLITE_NOTADB);

    private static final String[] TABLES = {
        "CREATE TABLE IF NOT EXISTS cursor (outlet TEXT, recording TEXT, outing INTEGER, second INTEGER, finding INTEGER,"
                + " PRIMARY KEY (outlet, recording, outing))",
        "CREATE TABLE IF NOT EXISTS refused (id INTEGER PRIMARY KEY, outlet TEXT, position TEXT, item TEXT, why TEXT)",
        "CREATE TABLE IF NOT EXISTS count (outlet TEXT PRIMARY KEY, refused INTEGER)"
    };

    private final Path file;
    private final Optional<Object> key;
    private final Connection connection;
    private final String outlet;

    private StateFile(Path file, String outlet) throws SQLException, IOException {
        this.file = file;
        this.outlet = outlet;
        connection = connect(file);
        key = key(file);
    }

    private static Optional<Object> key(Path file) throws IOException {
        return Optional.ofNullable(
                Files.readAttributes(file, BasicFileAttributes.class).fileKey());
    }

    /** Opens it for one outlet. */
    static synchronized StateFile open(Path folder, String outlet) throws SQLException, IOException {
        Path file = folder.resolve("state.db");
        try {
            return new StateFile(file, outlet);
        } catch (SQLException refusal) {
            if (!isDamage(refusal)) {
                throw refusal; // locked, a full disk: what stands in it is sound, and another outlet may have it open
            }
            putAside(file);
            return new StateFile(file, outlet);
        }
    }

    /** Whether the file itself is bad, now and for ever. Source: sqlite.org/rescode.html; the low byte is the primary code. */
    static boolean isDamage(Exception refusal) {
        return refusal instanceof SQLiteException sqlite
                && DAMAGE.contains(SQLiteErrorCode.getErrorCode(sqlite.getResultCode().code & 0xFF));
    }

    private static void putAside(Path file) throws IOException {
        Files.move(file, file.resolveSibling("state.db.damaged"), StandardCopyOption.REPLACE_EXISTING);
        Files.deleteIfExists(file.resolveSibling("state.db-wal"));
        Files.deleteIfExists(file.resolveSibling("state.db-shm"));
    }

    /** Puts this one aside, unless another outlet did and a new one stands in its place; the next {@link #open} makes a new one. */
    void putAside() throws IOException {
        synchronized (StateFile.class) {
            if (Files.exists(file) && key.equals(key(file))) {
                putAside(file);
            }
        }
    }

    private static Connection connect(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(5_000);
        Connection connection = config.createConnection(
                "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath());
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = NORMAL"); // losing the last moves costs repeats
            for (String table : TABLES) {
                statement.execute(table);
            }
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** Where the cursor stands in each outing of a recording. */
    Map<Integer, SaidMark> cursors(String recording) throws SQLException {
        Map<Integer, SaidMark> cursors = new HashMap<>();
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT outing, second, finding FROM cursor WHERE outlet = ? AND recording = ?")) {
            select.setString(1, outlet);
            select.setString(2, recording);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    cursors.put(rows.getInt(1), new SaidMark(rows.getLong(2), rows.getLong(3)));
                }
            }
        }
        return cursors;
    }

    void move(String recording, int outing, SaidMark to) throws SQLException {
        try (PreparedStatement put =
                connection.prepareStatement("INSERT OR REPLACE INTO cursor VALUES (?, ?, ?, ?, ?)")) {
            put.setString(1, outlet);
            put.setString(2, recording);
            put.setInt(3, outing);
            put.setLong(4, to.second());
            put.setLong(5, to.finding());
            put.executeUpdate();
        }
    }

    /**
     * Keeps what the server refuses for good; only the newest are kept, all are counted.
     *
     * @return false if it is kept already: a portion that is delivered again is refused again
     */
    boolean setAside(String position, String item, String why) throws SQLException {
        if (isKept(position, item)) {
            return false;
        }
        try (PreparedStatement put =
                connection.prepareStatement("INSERT INTO refused (outlet, position, item, why) VALUES (?, ?, ?, ?)")) {
            put.setString(1, outlet);
            put.setString(2, position);
            put.setString(3, item);
            put.setString(4, why);
            put.executeUpdate();
        }
        change("DELETE FROM refused WHERE outlet = ? AND id <= (SELECT max(id) FROM refused) - " + KEPT_REFUSED);
        change("INSERT INTO count VALUES (?, 1) ON CONFLICT (outlet) DO UPDATE SET refused = refused + 1");
        return true;
    }

    private boolean isKept(String position, String item) throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement("SELECT 1 FROM refused WHERE outlet = ? AND position = ? AND item = ?")) {
            select.setString(1, outlet);
            select.setString(2, position);
            select.setString(3, item);
            try (ResultSet rows = select.executeQuery()) {
                return rows.next();
            }
        }
    }

    private void change(String sql) throws SQLException {
        try (PreparedStatement change = connection.prepareStatement(sql)) {
            change.setString(1, outlet);
            change.executeUpdate();
        }
    }

    long refused() throws SQLException {
        try (PreparedStatement select = connection.prepareStatement("SELECT refused FROM count WHERE outlet = ?")) {
            select.setString(1, outlet);
            try (ResultSet rows = select.executeQuery()) {
                return rows.next() ? rows.getLong(1) : 0;
            }
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
