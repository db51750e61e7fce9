package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.sqlite.SQLiteConnection;

/**
 * Which recordings SQLite has open in this process, so that nobody opens one beside it: when any handle on a file is closed, the system
 * drops all locks that the process holds on that file ({@code fcntl}, POSIX), SQLite's own among them.
 *
 * <p>For all threads. Files are told apart by what the system calls them (device and number), whatever their names.
 */
final class OpenConnections {
    /** Chosen: seldom do two files that are opened at once share one. */
    private static final int STRIPES = 64;

    private static final List<OpenConnections> BY_FILE = new ArrayList<>();

    static {
        for (int i = 0; i < STRIPES; i++) {
            BY_FILE.add(new OpenConnections());
        }
    }

    private record Held(Object key, Connection connection) {}

    private final List<Held> held = new ArrayList<>();

    private OpenConnections() {}

    /** Opens a connection. */
    interface Opening {
        Connection open() throws SQLException;
    }

    /** Reads a file past SQLite. */
    interface Reading<T> {
        T read() throws IOException;
    }

    /** Opens a connection to {@code file}, which may not be there yet; it counts as open until it is closed. */
    static Connection open(Path file, Opening opening) throws SQLException {
        Object before = key(file);
        Connection connection = of(before).open(before, opening);
        Object after = key(file);
        if (!after.equals(before)) {
            of(after).open(after, () -> connection); // it was made only now
        }
        return connection;
    }

    private synchronized Connection open(Object key, Opening opening) throws SQLException {
        forgetClosed();
        Connection connection = opening.open();
        held.add(new Held(key, connection));
        return connection;
    }

    /**
     * Does {@code reading} while no connection to the file is open in this process, nor can be opened.
     *
     * @param key of the file, as {@link #key}
     * @param otherwise what is given where one is open
     */
    static <T> T whileClosed(Object key, Reading<T> reading, T otherwise) throws IOException {
        return of(key).whileNone(key, reading, otherwise);
    }

    private synchronized <T> T whileNone(Object key, Reading<T> reading, T otherwise) throws IOException {
        forgetClosed();
        return held.stream().anyMatch(one -> one.key().equals(key)) ? otherwise : reading.read();
    }

    private void forgetClosed() {
        held.removeIf(one -> isClosed(one.connection()));
    }

    /**
     * The driver says that a connection is closed just before it closes the file, but does both within its own monitor: who gets that
     * afterwards finds the file closed. One that is open is not waited for, whatever statement it is at.
     */
    private static boolean isClosed(Connection connection) {
        try {
            if (!connection.isClosed()) {
                return false;
            }
            synchronized (connection.unwrap(SQLiteConnection.class).getDatabase()) {
                return connection.isClosed();
            }
        } catch (SQLException e) {
            return false; // not known to be
        }
    }

    private static OpenConnections of(Object key) {
        return BY_FILE.get(Math.floorMod(key.hashCode(), STRIPES));
    }

    /** What the system calls {@code file}; its path where that cannot be told. */
    private static Object key(Path file) {
        try {
            return key(file, Files.readAttributes(file, BasicFileAttributes.class));
        } catch (IOException e) {
            return file.toAbsolutePath();
        }
    }

    static Object key(Path file, BasicFileAttributes attributes) {
        return Objects.requireNonNullElse(attributes.fileKey(), file.toAbsolutePath());
    }
}
