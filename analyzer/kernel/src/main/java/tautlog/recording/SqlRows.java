package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Rows read through SQLite, as they stand when they are asked for. */
record SqlRows(Connection connection) implements Rows {
    @Override
    public String winch() throws SQLException {
        return text("SELECT winch FROM recording");
    }

    @Override
    public String id() throws SQLException {
        return text("SELECT id FROM recording");
    }

    private String text(String sql) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet rows = select.executeQuery()) {
            return rows.next() ? String.valueOf(rows.getString(1)) : "";
        }
    }

    @Override
    public long evidence(int outing, long first, long last, EvidenceTaker taker) throws SQLException {
        long latest = 0;
        try (PreparedStatement select = connection.prepareStatement(
                EvidenceRow.SELECT + " WHERE outing = ? AND seq BETWEEN ? AND ? ORDER BY seq")) {
            select.setInt(1, outing);
            select.setLong(2, first);
            select.setLong(3, last);
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    EvidenceRow row = EvidenceRow.of(rows);
                    latest = row.seq();
                    taker.take(row);
                }
            }
        }
        return latest;
    }

    @Override
    public long between(long row, long later) throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement("SELECT count(*) FROM evidence WHERE seq > ? AND seq < ?")) {
            select.setLong(1, row);
            select.setLong(2, later);
            try (ResultSet counted = select.executeQuery()) {
                return counted.next() ? counted.getLong(1) : 0;
            }
        }
    }

    @Override
    public void heads(Consumer<EvidenceRow> taker) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(EvidenceRow.SELECT_HEADS + " ORDER BY seq");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                taker.accept(EvidenceRow.of(rows));
            }
        }
    }

    @Override
    public List<Integer> outingsWithTails() throws SQLException {
        List<Integer> outings = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement("SELECT DISTINCT outing FROM tail");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                outings.add(rows.getInt(1));
            }
        }
        return outings;
    }

    @Override
    public void tails(int outing, Taker taker) throws SQLException {
        read("SELECT id, span, blocks FROM tail WHERE outing = ? ORDER BY id", 2, outing, taker);
    }

    @Override
    public void findings(int outing, Taker taker) throws SQLException {
        read("SELECT id, start, crc, json FROM finding WHERE outing = ? ORDER BY id", 3, outing, taker);
    }

    /** @param numbers how many columns are numbers; the one behind them is bytes or text */
    private void read(String select, int numbers, int outing, Taker taker) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(select)) {
            statement.setInt(1, outing);
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    taker.take(EvidenceRow.numbers(rows, 1, numbers), EvidenceRow.bytes(rows, numbers + 1));
                }
            }
        }
    }
}
