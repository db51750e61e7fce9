package tautlog.logger.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import org.sqlite.SQLiteConfig;
import tautlog.recording.SaidMark;

/**
 * What a publisher remembers from one start to the next: {@code state.db} beside the recordings, an SQLite file. No evidence: when
 * it is lost, everything is published once more and consumers drop the repeats.
 *
 * <p>One that is damaged is put aside. One that cannot be written costs repeats only; the caller goes on in memory.
 */
final class StateFile implements AutoCloseable {
    /** Chosen: enough to see what is wrong, never a full disk. */
    private static final int KEPT_REFUSED = 1_000;

    private static final String[] TABLES = {
        "CREATE TABLE IF NOT EXISTS cursor (outlet TEXT, recording TEXT, outing INTEGER, second INTEGER, finding INTEGER,"
                + " PRIMARY KEY (outlet, recording, outing))",
        "CREATE TABLE IF NOT EXISTS refused (id INTEGER PRIMARY KEY, outlet TEXT, position TEXT, item TEXT, why TEXT)",
        "CREATE TABLE IF NOT EXISTS count (outlet TEXT PRIMARY KEY, refused INTEGER)"
    };

    private final Connection connection;
    private final String outlet;

    private StateFile(Connection connection, String outlet) {
        this.connection = connection;
        this.outlet = outlet;
    }

    /** Opens it for one outlet. */
    static synchronized StateFile open(Path folder, String outlet) throws SQLException, IOException {
        Path file = folder.resolve("state.db");
        try {
            return new StateFile(connect(file), outlet);
        } catch (SQLException damaged) {
            if (!Files.exists(file)) {
                throw damaged;
            }
            Files.move(file, folder.resolve("state.db.damaged"), StandardCopyOption.REPLACE_EXISTING);
            Files.deleteIfExists(folder.resolve("state.db-wal"));
            Files.deleteIfExists(folder.resolve("state.db-shm"));
            return new StateFile(connect(file), outlet);
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

    /** Keeps what the server refuses for good; only the newest are kept, all are counted. */
    void setAside(String position, String item, String why) throws SQLException {
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
