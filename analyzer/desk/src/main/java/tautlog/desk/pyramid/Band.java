package tautlog.desk.pyramid;

import java.util.Arrays;

/**
 * Least and greatest in columns of equal time. Each column holds whole buckets or single samples, whichever begin in it, and says from
 * when to when they reach: its extremes are exactly those of that time. What is missing is kept beside it. Times are microseconds on an
 * axis of the caller's. Not thread-safe.
 */
public final class Band {
    private final long from;
    private final long to;
    private final long[] begin;
    private final long[] end;
    private final double[] least;
    private final double[] greatest;
    private final long[] samples;
    private final long[] missingFrom;
    private final long[] missingTo;

    /**
     * An empty band.
     *
     * @param to later than {@code from}
     * @param columns 1 or more
     */
    public Band(long from, long to, int columns) {
        if (to <= from || columns < 1) {
            throw new IllegalArgumentException("a band needs a time: " + from + " to " + to + " in " + columns);
        }
        this.from = from;
        this.to = to;
        begin = filled(columns, Long.MAX_VALUE);
        end = filled(columns, Long.MIN_VALUE);
        least = new double[columns];
        greatest = new double[columns];
        samples = new long[columns];
        missingFrom = filled(columns, Long.MAX_VALUE);
        missingTo = filled(columns, Long.MIN_VALUE);
    }

    private static long[] filled(int n, long value) {
        long[] array = new long[n];
        Arrays.fill(array, value);
        return array;
    }

    /** {@code n} samples of which the first begins at {@code at} and that reach to {@code until}. */
    void add(long at, long until, double low, double high, long n) {
        int column = column(at);
        boolean isFirst = samples[column] == 0;
        least[column] = isFirst ? low : Math.min(least[column], low);
        greatest[column] = isFirst ? high : Math.max(greatest[column], high);
        begin[column] = Math.min(begin[column], at);
        end[column] = Math.max(end[column], until);
        samples[column] += n;
    }

    /** Nothing is known of what lies between these times. */
    public void cover(long at, long until) {
        missing(at, until);
    }

    /** Some or all of what lies between these times is missing. */
    void missing(long at, long until) {
        if (until <= from || at >= to || until <= at) {
            return;
        }
        int last = column(until - 1);
        for (int column = column(at); column <= last; column++) {
            missingFrom[column] = Math.min(missingFrom[column], Math.max(at, start(column)));
            missingTo[column] = Math.max(missingTo[column], Math.min(until, start(column + 1)));
        }
    }

    boolean isOneColumn(long at, long until) {
        return column(at) == column(until);
    }

    private long start(int column) {
        return from + Math.round((double) (to - from) * column / columns());
    }

    private int column(long at) {
        long clamped = Math.max(from, Math.min(to - 1, at));
        return (int) Math.min(columns() - 1L, (long) ((double) (clamped - from) / (to - from) * columns()));
    }

    public long from() {
        return from;
    }

    public long to() {
        return to;
    }

    public int columns() {
        return samples.length;
    }

    /** How many samples a column's extremes are of; 0 for a column that says nothing. */
    public long samples(int column) {
        return samples[column];
    }

    /** When the first of a column's samples was taken; it may lie a little before the column. */
    public long begin(int column) {
        return begin[column];
    }

    /** To when its samples reach; it may lie a little after the column. */
    public long end(int column) {
        return end[column];
    }

    public double least(int column) {
        return least[column];
    }

    public double greatest(int column) {
        return greatest[column];
    }

    public boolean isMissing(int column) {
        return missingTo[column] > missingFrom[column];
    }

    public long missingFrom(int column) {
        return missingFrom[column];
    }

    public long missingTo(int column) {
        return missingTo[column];
    }

    /** The column with the greatest value; -1 when there is none. */
    public int greatestColumn() {
        int best = -1;
        for (int column = 0; column < columns(); column++) {
            if (samples[column] > 0 && (best < 0 || greatest[column] > greatest[best])) {
                best = column;
            }
        }
        return best;
    }
}
