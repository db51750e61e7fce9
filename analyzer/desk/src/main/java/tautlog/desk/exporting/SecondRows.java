package tautlog.desk.exporting;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.function.Consumer;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Place;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.recording.RecordingException;

/** Collects the seconds of one outing and writes a row for each. */
final class SecondRows implements FindingSink {
    static final List<Column> COLUMNS = List.of(
            new Column("outing", Column.Type.INT),
            new Column("second", Column.Type.LONG),
            new Column("first_number", Column.Type.LONG),
            new Column("utc", Column.Type.TIME),
            new Column("least_n", Column.Type.NUMBER),
            new Column("mean_n", Column.Type.NUMBER),
            new Column("greatest_n", Column.Type.NUMBER),
            new Column("samples", Column.Type.INT),
            new Column("shaft_rpm", Column.Type.NUMBER),
            new Column("hookup", Column.Type.WORD),
            new Column("share", Column.Type.NUMBER),
            new Column("flags", Column.Type.WORD),
            new Column("lat_deg", Column.Type.NUMBER),
            new Column("lon_deg", Column.Type.NUMBER));

    private final DayReading day;
    private final int outing;
    private final List<Second> seconds = new ArrayList<>();

    SecondRows(DayReading day, int outing) {
        this.day = day;
        this.outing = outing;
    }

    @Override
    public void second(Second second) {
        seconds.add(second);
    }

    void write(Cells out) throws IOException {
        for (Second second : seconds) {
            row(second, out);
            out.endRow();
        }
    }

    private void row(Second second, Cells out) throws RecordingException {
        Moment at = day.times().ofNumber(second.firstNumber());
        out.whole(outing);
        out.whole(second.index());
        out.whole(second.firstNumber());
        either(at.utc(), out::time, out);
        out.number(newtons(second.least()));
        out.number(day.calibration().meanNewtons(second.countSum(), second.countSquares(), second.samples()));
        out.number(newtons(second.greatest()));
        out.whole(second.samples());
        if (second.shaftRpm().isPresent()) {
            out.number(second.shaftRpm().getAsDouble());
        } else {
            out.unknown();
        }
        out.word(second.hookup());
        out.number(second.share());
        out.word(flags(second.flags()));
        either(at.place().map(Place::latitudeDegrees), out::degrees, out);
        either(at.place().map(Place::longitudeDegrees), out::degrees, out);
    }

    private static <T> void either(Optional<T> value, Consumer<T> cell, Cells out) {
        value.ifPresentOrElse(cell, out::unknown);
    }

    private double newtons(double counts) {
        return day.calibration().newtons(counts);
    }

    private static String flags(int flags) {
        StringJoiner words = new StringJoiner(" ");
        word(words, flags, Second.GAP, "gap");
        word(words, flags, Second.END_STOP, "end-stop");
        word(words, flags, Second.OPEN_BRIDGE, "open-bridge");
        word(words, flags, Second.OVER_LIMIT, "over-limit");
        word(words, flags, Second.AT_MOST, "limit-is-at-most");
        return words.toString();
    }

    private static void word(StringJoiner words, int flags, int bit, String word) {
        if ((flags & bit) != 0) {
            words.add(word);
        }
    }

    @Override
    public void finding(Finding finding) {}

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    @Override
    public void shaftReading(long tick, double rpm) {}
}
