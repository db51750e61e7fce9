package tautlog.desk.plot;

import java.util.Arrays;

/**
 * Least and greatest tension, least and greatest shaft speed of each pixel column of a time from {@code from} to
 * {@code to}, both in seconds on an axis of the caller's. Not thread-safe; allocates nothing once made.
 */
public final class Columns {
    private final double from;
    private final double to;
    private final double perSecond;
    private final double[] least;
    private final double[] greatest;
    private final double[] leastRpm;
    private final double[] greatestRpm;
    private final double[] limit;
    private final boolean[] gap;

    /**
     * @param to later than {@code from}
     * @param width how many columns, 1 or more
     */
    public Columns(double from, double to, int width) {
        if (!(to > from) || width < 1) {
            throw new IllegalArgumentException("columns need a time: " + from + " to " + to + " in " + width);
        }
        this.from = from;
        this.to = to;
        perSecond = width / (to - from);
        least = filled(width, Double.POSITIVE_INFINITY);
        greatest = filled(width, Double.NEGATIVE_INFINITY);
        leastRpm = filled(width, Double.POSITIVE_INFINITY);
        greatestRpm = filled(width, Double.NEGATIVE_INFINITY);
        limit = filled(width, Double.NaN);
        gap = new boolean[width];
    }

    private static double[] filled(int width, double value) {
        double[] array = new double[width];
        Arrays.fill(array, value);
        return array;
    }

    /** A sample of {@code newtons} at {@code seconds}; one outside the time is left out. */
    public void tension(double seconds, double newtons) {
        int column = column(seconds);
        if (column >= 0) {
            least[column] = Math.min(least[column], newtons);
            greatest[column] = Math.max(greatest[column], newtons);
        }
    }

    /** A shaft reading. */
    public void shaft(double seconds, double rpm) {
        int column = column(seconds);
        if (column >= 0) {
            leastRpm[column] = Math.min(leastRpm[column], rpm);
            greatestRpm[column] = Math.max(greatestRpm[column], rpm);
        }
    }

    /** The limit in force from {@code fromSeconds} to {@code toSeconds}; a later call wins. */
    public void limit(double fromSeconds, double toSeconds, double newtons) {
        span(fromSeconds, toSeconds, (first, last) -> Arrays.fill(limit, first, last + 1, newtons));
    }

    /** Nothing is known between two samples at these times. */
    public void gap(double fromSeconds, double toSeconds) {
        span(fromSeconds, toSeconds, (first, last) -> Arrays.fill(gap, first, last + 1, true));
    }

    private void span(double fromSeconds, double toSeconds, Span action) {
        if (toSeconds < from || fromSeconds > to) {
            return;
        }
        action.fill(
                Math.max(0, column(Math.max(from, fromSeconds))),
                column(Math.min(Math.nextDown(to), Math.max(from, toSeconds))));
    }

    private interface Span {
        void fill(int first, int last);
    }

    /** Whether any part of {@code fromSeconds} to {@code toSeconds} is drawn here. */
    public boolean covers(double fromSeconds, double toSeconds) {
        return toSeconds >= from && fromSeconds <= to;
    }

    /** The column in which {@code seconds} lies, -1 for none; {@code to} itself lies in the last. */
    public int column(double seconds) {
        if (seconds < from || seconds > to) {
            return -1;
        }
        return Math.min(least.length - 1, (int) ((seconds - from) * perSecond));
    }

    public int width() {
        return least.length;
    }

    public double from() {
        return from;
    }

    public double to() {
        return to;
    }

    public boolean hasTension(int column) {
        return least[column] <= greatest[column];
    }

    public double least(int column) {
        return least[column];
    }

    public double greatest(int column) {
        return greatest[column];
    }

    public boolean hasShaft(int column) {
        return leastRpm[column] <= greatestRpm[column];
    }

    public double leastRpm(int column) {
        return leastRpm[column];
    }

    public double greatestRpm(int column) {
        return greatestRpm[column];
    }

    /** NaN where none is known. */
    public double limit(int column) {
        return limit[column];
    }

    public boolean isGap(int column) {
        return gap[column];
    }

    /** 0 with none. */
    public double greatestTension() {
        return Math.max(
                0, Arrays.stream(greatest).filter(Double::isFinite).max().orElse(0));
    }

    double leastTension() {
        return Math.min(0, Arrays.stream(least).filter(Double::isFinite).min().orElse(0));
    }

    /** 0 with none. */
    public double greatestLimit() {
        return Arrays.stream(limit).filter(Double::isFinite).max().orElse(0);
    }

    /** 0 with none. */
    public double greatestShaft() {
        return Arrays.stream(greatestRpm).filter(Double::isFinite).max().orElse(0);
    }

    /** Whether there is any sample. */
    public boolean hasTension() {
        return Arrays.stream(greatest).anyMatch(Double::isFinite);
    }

    /** The least tension, below 0 too; infinite with none. */
    public double leastOfAll() {
        return Arrays.stream(least).min().orElseThrow();
    }

    /** The greatest tension, below 0 too; minus infinite with none. */
    public double greatestOfAll() {
        return Arrays.stream(greatest).max().orElseThrow();
    }

    /** The least shaft speed; infinite with none. */
    public double leastShaft() {
        return Arrays.stream(leastRpm).min().orElseThrow();
    }

    /** Whether any part of the time is missing. */
    public boolean hasGap() {
        for (boolean missing : gap) {
            if (missing) {
                return true;
            }
        }
        return false;
    }

    public boolean hasShaft() {
        return Arrays.stream(greatestRpm).anyMatch(Double::isFinite);
    }
}
