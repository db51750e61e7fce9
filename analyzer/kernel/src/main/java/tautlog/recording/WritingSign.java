package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Says in the main file that newest rows stand in the {@code -wal} beside it, so that a copy of the main file alone is known to
 * lack them. {@code analyzer/RECORDING.md}, "Copied alone".
 *
 * <pre>
 *   begin ─▶ row in begun ─▶ folded into the main file ─▶ … rows in the -wal … ─▶ all folded ─▶ row deleted ─▶ close
 * </pre>
 *
 * The row is deleted only in a later fold than the rows that it speaks for; so power may go between any two steps.
 */
final class WritingSign {
    private final Connection connection;
    private boolean waitsForFold;

    WritingSign(Connection connection) {
        this.connection = connection;
    }

    /** Puts the sign up, within the transaction that begins {@code outing}. */
    void putUp(int outing) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO begun (outing, lost) SELECT ?, 0"
                + " WHERE NOT EXISTS (SELECT 1 FROM begun WHERE lost = 0)")) {
            insert.setInt(1, outing);
            waitsForFold |= insert.executeUpdate() > 0;
        }
    }

    /** Brings a sign that is committed into the main file; tried again after each commit while a reader or the disk is in the way. */
    void foldIfNew() {
        waitsForFold = waitsForFold && !isFolded(connection);
    }

    /** Takes the sign down when all that it speaks for is in the main file, or else will be together with it. */
    static void takeDown(Connection connection) throws SQLException {
        if (openSigns(connection) > 0) {
            isFolded(connection);
            try (Statement statement = connection.createStatement()) {
                statement.execute("DELETE FROM begun WHERE lost = 0");
            }
        }
    }

    /** The rows that a sign speaks for are not here and this writer goes on without them: the sign stays for good. */
    void keepForGood() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("UPDATE begun SET lost = 1");
        }
    }

    /** True when the main file holds all that was committed; does not wait for readers. */
    private static boolean isFolded(Connection connection) {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA wal_checkpoint(PASSIVE)")) {
            return rows.next() && rows.getInt(1) == 0 && rows.getInt(2) == rows.getInt(3);
        } catch (SQLException e) {
            return false; // no room to fold into: nothing is lost, the log keeps it
        }
    }

    private static long openSigns(Connection connection) throws SQLException {
        return RecordingFile.query(connection, "SELECT count(*) FROM begun WHERE lost = 0");
    }

    /**
     * The outings from which on rows are missing in {@code file} as it lies there; empty when all is there.
     *
     * @param hadLog whether the log stood beside it before {@code connection} saw the file
     */
    static List<LostOuting> missing(Connection connection, Path file, boolean hadLog) throws SQLException {
        List<LostOuting> missing = new ArrayList<>();
        if (RecordingFile.query(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'begun'") == 0) {
            return missing;
        }
        String log = String.valueOf(RecordingFile.log(file).getFileName());
        try (PreparedStatement select = connection.prepareStatement("SELECT outing, lost FROM begun ORDER BY outing");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                boolean lost = rows.getInt(2) != 0;
                if (lost || !(hadLog || RecordingFile.hasLog(file))) {
                    missing.add(new LostOuting(
                            rows.getInt(1), lost ? wentOnWithout(log) : notBeside(log), OptionalLong.empty()));
                }
            }
        }
        return missing;
    }

    private static String notBeside(String log) {
        return "it was begun here and its newest rows stand in " + log
                + ", which is not beside the file (copy both files together); they, and outings after it, are missing";
    }

    private static String wentOnWithout(String log) {
        return "it was begun here and its newest rows stood in " + log
                + ", without which the recording then went on; they, and outings after it, are missing";
    }
}
