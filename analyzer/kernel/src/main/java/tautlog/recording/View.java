package tautlog.recording;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;

/** Through what a recording is read. */
interface View extends AutoCloseable {
    /** The rows that are read most. */
    Rows rows();

    /** For all else. */
    Connection connection() throws SQLException;

    /** The outings from which on rows are missing in the file. */
    List<LostOuting> missing() throws SQLException;

    /** From now on what is committed later is seen, too. */
    void letGo() throws SQLException;

    @Override
    void close() throws SQLException;

    /**
     * Through SQLite.
     *
     * @param hadLog whether a log stood beside the file before it was opened
     */
    record Sql(Path file, Connection connection, boolean hadLog) implements View {
        @Override
        public Rows rows() {
            return new SqlRows(connection);
        }

        @Override
        public List<LostOuting> missing() throws SQLException {
            return WritingSign.missing(connection, file, hadLog);
        }

        @Override
        public void letGo() throws SQLException {
            connection.commit();
        }

        @Override
        public void close() throws SQLException {
            connection.close();
        }
    }

    /** Through a connection that somebody else closes, and whose transactions are somebody else's. */
    record Lent(Sql sql) implements View {
        @Override
        public Rows rows() {
            return sql.rows();
        }

        @Override
        public Connection connection() {
            return sql.connection();
        }

        @Override
        public List<LostOuting> missing() throws SQLException {
            return sql.missing();
        }

        @Override
        public void letGo() {}

        @Override
        public void close() {}
    }

    /** A closed file as it lay there when it was opened, in memory. */
    final class Plain implements View {
        private final byte[] bytes;
        private final PlainRows rows;
        private Optional<Connection> connection = Optional.empty();

        /** @param bytes that {@code rows} are of */
        Plain(byte[] bytes, PlainRows rows) {
            this.bytes = bytes;
            this.rows = rows;
        }

        @Override
        public Rows rows() {
            return rows;
        }

        /** SQLite over a copy of the bytes, made when it is asked for. */
        @Override
        public Connection connection() throws SQLException {
            if (connection.isEmpty()) {
                Connection made = new SQLiteConfig().createConnection("jdbc:sqlite::memory:");
                try {
                    made.unwrap(SQLiteConnection.class).deserialize("main", bytes);
                    made.setAutoCommit(false);
                } catch (SQLException e) {
                    made.close();
                    throw e;
                }
                connection = Optional.of(made);
            }
            return connection.get();
        }

        /** Of a closed file none are, as {@link PlainRows} sees to. */
        @Override
        public List<LostOuting> missing() {
            return List.of();
        }

        @Override
        public void letGo() {}

        @Override
        public void close() throws SQLException {
            if (connection.isPresent()) {
                connection.get().close();
            }
        }
    }
}
