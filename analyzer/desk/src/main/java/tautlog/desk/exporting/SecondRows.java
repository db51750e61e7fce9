package tautlog.desk.exporting;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import tautlog.desk.analysis.DayReading;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.Moment;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.recording.RecordingException;

/** Collects the seconds of one outing and writes a row for each. */
final class SecondRows implements FindingSink {
    static final String HEAD =
            "outing,second,first_number,utc,least_n,mean_n,greatest_n,samples,shaft_rpm,hookup,share,flags,lat_deg,lon_deg";

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

    void write(Writer out) throws IOException {
        for (Second second : seconds) {
            out.append(row(second)).append('\n');
        }
    }

    private String row(Second second) throws RecordingException {
        StringJoiner row = new StringJoiner(",");
        row.add(String.valueOf(outing)).add(String.valueOf(second.index())).add(String.valueOf(second.firstNumber()));
        Moment at = day.times().ofNumber(second.firstNumber());
        row.add(at.utc().map(JsonFields::time).orElse(""));
        double mean = day.calibration().meanNewtons(second.countSum(), second.countSquares(), second.samples());
        row.add(newtons(second.least())).add(JsonFields.number(mean));
        row.add(newtons(second.greatest())).add(String.valueOf(second.samples()));
        row.add(
                second.shaftRpm().isPresent()
                        ? JsonFields.number(second.shaftRpm().getAsDouble())
                        : "");
        row.add(second.hookup()).add(JsonFields.number(second.share())).add(flags(second.flags()));
        row.add(at.place().map(place -> degrees(place.latitudeDegrees())).orElse(""));
        row.add(at.place().map(place -> degrees(place.longitudeDegrees())).orElse(""));
        return row.toString();
    }

    private static String degrees(double value) {
        return String.format(Locale.ROOT, "%.7f", value);
    }

    private String newtons(double counts) {
        return JsonFields.number(day.calibration().newtons(counts));
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
