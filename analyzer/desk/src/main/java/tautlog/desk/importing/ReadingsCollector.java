package tautlog.desk.importing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import tautlog.desk.page.Screen;

/** Takes row after row, leaves out what is no reading, and makes one history of the rest. */
final class ReadingsCollector {
    /** Chosen: beyond nine digits behind the point no indicator's resolution is real. */
    private static final int MOST_DECIMALS = 9;

    private final String file;
    private final ZoneId zone;
    private Optional<TimeForm> form = Optional.empty();
    private long[] micros = new long[1024];
    private BigDecimal[] forces = new BigDecimal[1024];
    private int size;
    private int decimals;
    private Readings.LeftOut leftOut = Readings.LeftOut.NONE;

    ReadingsCollector(String file, ZoneId zone) {
        this.file = file;
        this.zone = zone;
    }

    void row(long line, String time, String force) throws ImportException {
        if (form.isEmpty()) {
            form = TimeForm.of(time, zone);
        }
        Optional<Long> at = form.flatMap(known -> known.read(time, zone));
        Optional<BigDecimal> value = number(force);
        if (at.isEmpty()) {
            leaveOut(line, "\"" + time + "\" is not a time");
        } else if (value.isEmpty()) {
            leaveOut(line, "\"" + force + "\" is not a number");
        } else {
            append(line, at.get(), value.get());
        }
    }

    /** A plain number; one with an absurd exponent is none. */
    static Optional<BigDecimal> number(String text) {
        try {
            BigDecimal number = new BigDecimal(text);
            return Math.abs((long) number.scale()) > 100 ? Optional.empty() : Optional.of(number);
        } catch (NumberFormatException e) {
            return Optional.empty(); // the caller names the line
        }
    }

    /** Counts a line that holds no reading. */
    void leaveOut(long line, String why) {
        boolean first = leftOut.lines() == 0;
        leftOut = new Readings.LeftOut(
                leftOut.lines() + 1, first ? line : leftOut.firstLine(), first ? why : leftOut.why());
    }

    private void append(long line, long at, BigDecimal value) throws ImportException {
        if (size > 0 && at < micros[size - 1]) {
            throw ImportException.content(file + ":" + line + ": the time goes back by "
                    + BigDecimal.valueOf(micros[size - 1] - at, 6).toPlainString()
                    + " s.\n  Sort the lines by time. Where local clocks were set back, use a column with UTC or with"
                    + " seconds since the start.");
        }
        if (size == forces.length) {
            micros = Arrays.copyOf(micros, size * 2);
            forces = Arrays.copyOf(forces, size * 2);
        }
        decimals = Math.max(decimals, value.scale());
        micros[size] = at;
        forces[size++] = value;
    }

    /** @throws ImportException if fewer than two readings came, or a force has more digits than a count can hold */
    Readings finish() throws ImportException {
        if (size < 2) {
            throw ImportException.content(file + ": " + Screen.counted(size, "reading") + (size == 1 ? " was" : " were")
                    + " found, two are needed: from one no rate and no length of time follows." + remedy());
        }
        int places = Math.min(decimals, MOST_DECIMALS);
        int[] counts = new int[size];
        for (int i = 0; i < size; i++) {
            counts[i] = count(forces[i], places);
        }
        boolean utc = form.map(TimeForm::tellsTheDate).orElse(false);
        return new Readings(Arrays.copyOf(micros, size), utc, counts, places, leftOut);
    }

    private String remedy() {
        return leftOut.lines() == 0
                ? "\n  Give a table with two readings or more."
                : " " + Screen.counted(leftOut.lines(), "line") + " left out; the first, line " + leftOut.firstLine()
                        + ": "
                        + leftOut.why() + "."
                        + "\n  Times: seconds, 2026-05-04T07:00:00.125Z, 2026-05-04T07:00:00.125 or"
                        + " 2026-05-04-07:00:00.125. Forces: plain numbers with a point.";
    }

    private int count(BigDecimal value, int places) throws ImportException {
        try {
            return value.movePointRight(places)
                    .setScale(0, RoundingMode.HALF_UP)
                    .intValueExact();
        } catch (ArithmeticException tooBig) {
            throw ImportException.content(file + ": the force " + value.toPlainString() + " with " + places
                    + " decimals does not fit into a count.\n  Round the column to fewer decimals.");
        }
    }
}
