package tautlog.recording;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import tautlog.sample.Instrument;

/**
 * When the samples of a thinned outing were taken: its blocks' first numbers and first ticks are known, and no number is missing
 * between them, since an outing with a gap is never thinned. Between two blocks a straight line, after the last one the nominal rate.
 */
final class ThinnedTicks {
    private final int outing;
    private final long[] first;
    private final long[] tick;
    private final long lastNumber;
    private final double nominal;

    private ThinnedTicks(int outing, Instrument instrument, long[] first, long[] tick, long lastNumber) {
        this.outing = outing;
        this.first = first;
        this.tick = tick;
        this.lastNumber = lastNumber;
        nominal = instrument.tickHz() * 1_000.0 / instrument.rateMillihertz();
    }

    static ThinnedTicks read(Connection connection, int outing, Instrument instrument) throws SQLException {
        long[] first = new long[16];
        long[] tick = new long[16];
        int n = 0;
        long last = Long.MIN_VALUE;
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT first, tick, last FROM evidence WHERE outing = ? AND kind = 2 ORDER BY seq")) {
            select.setInt(1, outing);
            try (ResultSet rows = select.executeQuery()) {
                for (; rows.next(); n++) {
                    first = n == first.length ? Arrays.copyOf(first, 2 * n) : first;
                    tick = n == tick.length ? Arrays.copyOf(tick, 2 * n) : tick;
                    first[n] = rows.getLong(1);
                    tick[n] = rows.getLong(2);
                    last = rows.getLong(3);
                }
            }
        }
        return new ThinnedTicks(outing, instrument, Arrays.copyOf(first, n), Arrays.copyOf(tick, n), last);
    }

    long tickOf(long number) {
        int found = Arrays.binarySearch(first, number);
        int block = found >= 0 ? found : -found - 2;
        if (block < 0 || number > lastNumber) {
            throw new IllegalArgumentException("outing " + outing + " never held a sample with number " + number);
        }
        return tick[block] + Math.round((number - first[block]) * slope(block));
    }

    /** Ticks from one sample to the next. */
    private double slope(int block) {
        return block + 1 < first.length
                ? (double) (tick[block + 1] - tick[block]) / (first[block + 1] - first[block])
                : nominal;
    }
}
