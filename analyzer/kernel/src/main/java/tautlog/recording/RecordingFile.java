package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import tautlog.recording.RecordingException.Scope;

/**
 * Opens the SQLite file that a recording is, and says in words what SQLite says in codes.
 *
 * <p>The file is never opened beside SQLite by this process while a connection may be open: closing such a second handle would
 * drop SQLite's own locks. So every connection is opened through {@link OpenConnections}.
 */
final class RecordingFile {
    /** "Taut"; at byte 68 of the file. */
    static final int APPLICATION_ID = 0x54617574;
    /** Newest format version that can be read, that of all that is recorded; copies keep that of their file. At byte 60. */
    static final int VERSION = 4;
    /** From this one on a file may be packed. */
    static final int PACKED_VERSION = 2;

    /** Chosen: with pages of 4,096 bytes the ends of blocks leave 0.10 bytes a sample of them empty. */
    static final int PAGE_SIZE = 1_024;
    /** Of a packed file: nobody writes to it any more, and the ends of its smaller blocks leave less of each page empty. */
    static final int PACKED_PAGE_SIZE = 512;

    private static final Set<Integer> OF_ONE_FILE = Set.of(
            SQLiteErrorCode.SQLITE_NOTADB.code,
            SQLiteErrorCode.SQLITE_CORRUPT.code,
            SQLiteErrorCode.SQLITE_ERROR.code, // tables that are not there
            SQLiteErrorCode.SQLITE_BUSY.code,
            SQLiteErrorCode.SQLITE_LOCKED.code);

    /** A recording made before this table was thought of gets it when it is gone on with. */
    private static final StoredTable[] LATER = {StoredTable.BEGUN};

    private RecordingFile() {}

    /**
     * Opens {@code file} for writing, makes it when it is not there or empty. Changes nothing in a foreign or
     * damaged file. {@code id} is for a file that it makes.
     */
    static Connection openForWriting(Path file, String winch, String id) throws RecordingException {
        refuseFolder(file);
        lookFirst(file, winch);
        try {
            SQLiteConfig config = new SQLiteConfig();
            config.setBusyTimeout(5_000);
            Connection connection = OpenConnections.open(file, () -> config.createConnection(url(file)));
            try {
                boolean isNew = isNew(connection);
                if (!isNew) {
                    check(connection, file);
                    requireWinch(connection, file, winch);
                }
                prepare(connection, isNew, winch, id);
                return connection;
            } catch (SQLException | RecordingException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw explain(file, e);
        }
    }

    /** A connection that writes folds the log into the file when it is closed, whatever it found there: so one that only reads looks. */
    private static void lookFirst(Path file, String winch) throws RecordingException {
        if (!Files.exists(file)) {
            return;
        }
        try (Connection looking = connect(file, "")) {
            if (!isNew(looking)) {
                check(looking, file);
                requireWinch(looking, file, winch);
            }
        } catch (SQLException e) {
            if (needsWritableFolder(e)) {
                return; // what a power cut left has to be undone first, or the folder is read-only
            }
            throw explain(file, e);
        }
    }

    private static void requireWinch(Connection connection, Path file, String winch)
            throws SQLException, RecordingException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT winch FROM recording")) {
            if (!rows.next()) {
                throw RecordingException.ofThisFile(file + ": does not say which winch it is of; it is damaged.");
            }
            String stored = rows.getString(1);
            if (!winch.equals(stored)) {
                throw RecordingException.ofThisFile(file + ": is a recording of winch '" + stored + "', not of '"
                        + winch + "'. Name another folder, or correct the winch's name.");
            }
        }
    }

    private static void prepare(Connection connection, boolean isNew, String winch, String id) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (isNew) {
                statement.execute("PRAGMA page_size = " + PAGE_SIZE);
            }
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("BEGIN IMMEDIATE");
            for (StoredTable table : isNew ? StoredTable.values() : LATER) {
                statement.execute(table.ifMissing());
            }
            if (isNew) {
                statement.execute("PRAGMA application_id = " + APPLICATION_ID);
            }
            if (query(connection, "PRAGMA user_version") < VERSION) {
                // one of an older version, too: it is gone on with by blocks that only this one knows
                statement.execute("PRAGMA user_version = " + VERSION);
            }
        }
        if (isNew) {
            try (var insert = connection.prepareStatement("INSERT INTO recording (winch, id) VALUES (?, ?)")) {
                insert.setString(1, winch);
                insert.setString(2, id);
                insert.execute();
            }
        }
        try (Statement statement = connection.createStatement()) {
            statement.execute("COMMIT");
        }
    }

    /**
     * Makes {@code copy}, which is not there, with the tables of {@code file}, and begins a transaction on it. Its rows come from {@code
     * file}, which is attached as {@code old}.
     */
    static Connection beginCopy(Path file, Path copy, int pageSize) throws SQLException {
        Connection connection = OpenConnections.open(copy, () -> new SQLiteConfig().createConnection(url(copy)));
        try (Statement statement = connection.createStatement()) {
            OpenConnections.open(file, () -> connection);
            statement.execute("PRAGMA page_size = " + pageSize);
            statement.execute("PRAGMA synchronous = FULL");
            try (var attach = connection.prepareStatement("ATTACH ? AS old")) {
                attach.setString(1, uri(file) + "?mode=ro");
                attach.execute();
            }
            statement.execute("BEGIN IMMEDIATE");
            statement.execute("PRAGMA main.application_id = " + APPLICATION_ID);
            statement.execute("PRAGMA main.user_version = " + query(connection, "PRAGMA old.user_version"));
            for (String table : tables(connection)) {
                statement.execute(definition(connection, table));
            }
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** The names of the tables of the file that is attached as {@code old}; those that SQLite keeps for itself (as ANALYZE) left out. */
    static List<String> tables(Connection connection) throws SQLException {
        List<String> tables = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT name FROM old.sqlite_master"
                        + " WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")) {
            while (rows.next()) {
                tables.add(rows.getString(1));
            }
        }
        return tables;
    }

    private static String definition(Connection connection, String table) throws SQLException {
        try (var select =
                connection.prepareStatement("SELECT sql FROM old.sqlite_master WHERE type = 'table' AND name = ?")) {
            select.setString(1, table);
            try (ResultSet rows = select.executeQuery()) {
                rows.next();
                return rows.getString(1);
            }
        }
    }

    static String url(Path file) {
        return "jdbc:sqlite:" + uri(file);
    }

    private static String uri(Path file) {
        return "file:" + file.toAbsolutePath().toUri().getRawPath();
    }

    /** Opens {@code file} for reading only, also on a medium that cannot be written. */
    static Connection openForReading(Path file) throws RecordingException {
        refuseFolder(file);
        if (!Files.exists(file)) {
            throw new RecordingException(file + ": there is no such file. Check the name.");
        }
        if (!Files.isReadable(file)) {
            throw new RecordingException(
                    file + ": may not be read by this user. Give the file read permission, or copy it.");
        }
        try {
            return checked(file, connect(file, ""));
        } catch (SQLException e) {
            if (!needsWritableFolder(e)) {
                throw explain(file, e);
            }
            if (hasLog(file)) {
                throw new RecordingException(
                        file + ": its newest rows stand in the -wal file beside it, which can only be read in a folder"
                                + " that can be written. Copy both files to such a folder and name the copy.",
                        e);
            }
            if (hasJournal(file)) {
                throw new RecordingException(
                        file
                                + ": a change to it was broken off; what takes it back stands in the -journal file beside it,"
                                + " which who only reads may not use. Let the program that wrote it, or the logger, open"
                                + " it once where its folder can be written; or copy both files to such a folder, do it"
                                + " there and name the copy.",
                        e,
                        Scope.THIS_FILE);
            }
        }
        try {
            return checked(file, connect(file, "?immutable=1"));
        } catch (SQLException e) {
            throw explain(file, e);
        }
    }

    private static boolean needsWritableFolder(SQLException e) {
        int code = primary(e);
        return code == SQLiteErrorCode.SQLITE_CANTOPEN.code || code == SQLiteErrorCode.SQLITE_READONLY.code;
    }

    /** True when committed rows may still stand in the write-ahead log beside the file. */
    static boolean hasLog(Path file) {
        try {
            return Files.size(log(file)) > 0;
        } catch (IOException e) {
            return false; // not there
        }
    }

    /** True when a change may stand half done in the file; SQLite keeps its journal beside what a link points to. */
    private static boolean hasJournal(Path file) {
        try {
            return Files.size(journal(file.toRealPath())) > 0;
        } catch (IOException e) {
            return false; // not there
        }
    }

    static Path journal(Path file) {
        return file.resolveSibling(file.getFileName() + "-journal");
    }

    static Path log(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal");
    }

    private static Connection connect(Path file, String parameters) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(5_000);
        return OpenConnections.open(file, () -> config.createConnection(url(file) + parameters));
    }

    private static Connection checked(Path file, Connection connection) throws SQLException, RecordingException {
        try {
            if (isNew(connection)) {
                throw RecordingException.ofThisFile(file
                        + ": is empty: nothing was recorded in it, or its rows stand in "
                        + log(file).getFileName() + ", which is not beside it. Copy both files together from where it"
                        + " was recorded.");
            }
            check(connection, file);
            connection.setAutoCommit(false);
            return connection;
        } catch (SQLException | RecordingException e) {
            connection.close();
            throw e;
        }
    }

    private static void refuseFolder(Path file) throws RecordingException {
        if (Files.isDirectory(file)) {
            throw RecordingException.ofThisFile(file + ": is a folder, not a recording. Name a .tautlog file in it.");
        }
    }

    private static boolean isNew(Connection connection) throws SQLException {
        return pragma(connection, "application_id") == 0
                && pragma(connection, "user_version") == 0
                && query(connection, "SELECT count(*) FROM sqlite_master") == 0;
    }

    private static void check(Connection connection, Path file) throws SQLException, RecordingException {
        long id = pragma(connection, "application_id");
        if (id != APPLICATION_ID) {
            throw RecordingException.ofThisFile(file + ": is an SQLite file of another program (application id " + id
                    + "), not a recording. Name a .tautlog file that tautlogd or `tautlog import` made.");
        }
        long version = pragma(connection, "user_version");
        if (version > VERSION) {
            throw RecordingException.ofThisFile(file + ": is a recording of format version " + version
                    + "; this program reads up to " + VERSION + ". Use a newer version of the program.");
        }
        refuseTorn(connection, file);
    }

    /** SQLite notices whole pages that are missing, but only when it reads them; the log, if any, may still hold them. */
    private static void refuseTorn(Connection connection, Path file) throws SQLException, RecordingException {
        long expected = pragma(connection, "page_count") * pragma(connection, "page_size");
        try {
            long found = Files.size(file);
            if (found < expected && !hasLog(file)) {
                throw RecordingException.ofThisFile(file + ": is torn: " + expected + " bytes were expected, " + found
                        + " are there. Copy it again from where it was recorded, with the -wal file beside it if there"
                        + " is one.");
            }
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(file + ": its size cannot be told: " + e.getMessage(), e);
        }
    }

    static long pragma(Connection connection, String name) throws SQLException {
        return query(connection, "PRAGMA " + name);
    }

    static long query(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getLong(1) : 0;
        }
    }

    static int primary(SQLException e) {
        return e instanceof SQLiteException sqlite ? sqlite.getResultCode().code & 0xFF : -1;
    }

    /** The same trouble in words that say what to do. */
    static RecordingException explain(Path file, SQLException e) {
        int code = primary(e);
        Scope scope = OF_ONE_FILE.contains(code) ? Scope.THIS_FILE : Scope.BEYOND;
        String what;
        if (code == SQLiteErrorCode.SQLITE_NOTADB.code) {
            what = "is no recording (it does not begin like an SQLite file). Name a .tautlog file.";
        } else if (code == SQLiteErrorCode.SQLITE_CORRUPT.code) {
            what = "is torn or damaged: SQLite cannot follow its pages. Copy it again from where it was recorded,"
                    + " with the -wal file beside it if there is one.";
        } else if (code == SQLiteErrorCode.SQLITE_ERROR.code) {
            what = "does not hold the tables of a recording, or they are damaged.";
        } else if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            what = "is locked by another program that writes to it. Stop that program, or copy the file.";
        } else if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            what = "cannot grow: the disk is full. Free space; nothing committed is lost and what waits is kept.";
        } else if (code == SQLiteErrorCode.SQLITE_READONLY.code) {
            what = "may not be written. Give the file and its folder write permission, or name another folder.";
        } else if (code == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
            what = "cannot be opened. Check that its folder exists and that this user may use it.";
        } else if (code == SQLiteErrorCode.SQLITE_IOERR.code) {
            what = "the disk refuses to read or write it. Check the disk and its free space.";
        } else {
            what = "cannot be used.";
        }
        return new RecordingException(file + ": " + what + " (" + e.getMessage() + ")", e, scope);
    }
}
