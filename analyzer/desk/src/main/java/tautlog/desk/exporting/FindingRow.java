package tautlog.desk.exporting;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.Moment;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Known;

/** One row of the {@link FindingTable}; a cell that nobody fills is empty: it does not apply, or is not known. */
final class FindingRow {
    /** The columns in their order; new ones come last. */
    enum Column {
        KIND,
        START,
        END,
        TENSION_N,
        SHARE,
        HOOKUP,
        LIMIT_N,
        LIMIT_IS_AT_MOST,
        BAND,
        SECONDS,
        DETAIL,
        WHAT_IF,
        HOOKUP_ASSUMED,
        AT_LEAST,
        HELD,
        HAS_GAP,
        CUT_BY_GAP,
        CUT_BY_END,
        STAYS_SLACK,
        CLUTCH,
        BRAKE,
        TENSION_LOW_N,
        TENSION_HIGH_N,
        SHARE_LOW,
        SHARE_HIGH,
        LARGEST_CAUSE,
        MAY_BE_OVER,
        BAND_MAY_BE,
        MEAN_N,
        MEAN_LOW_N,
        MEAN_HIGH_N,
        IMPULSE_NS,
        IMPULSE_LOW_NS,
        IMPULSE_HIGH_NS,
        SETTLED_N,
        SETTLED_LOW_N,
        SETTLED_HIGH_N,
        FACTOR,
        FACTOR_LOW,
        FACTOR_HIGH,
        RISE_N,
        RISE_LOW_N,
        RISE_HIGH_N,
        RISE_N_PER_S,
        RISE_LOW_N_PER_S,
        RISE_HIGH_N_PER_S,
        AFTER_N,
        AFTER_LOW_N,
        AFTER_HIGH_N
    }

    private final Moment start;
    private final Map<Column, String> filled = new EnumMap<>(Column.class);

    FindingRow(String kind, Entry entry) {
        start = entry.start();
        text(Column.KIND, kind);
        text(Column.START, time(entry.start()));
        text(Column.END, time(entry.end()));
    }

    private static String time(Moment moment) {
        return moment.utc().map(JsonFields::time).orElse("");
    }

    Moment start() {
        return start;
    }

    /** All of them, in the order of {@link Column}. */
    List<String> cells() {
        return Stream.of(Column.values())
                .map(column -> filled.getOrDefault(column, ""))
                .toList();
    }

    FindingRow text(Column column, String text) {
        filled.put(column, text);
        return this;
    }

    FindingRow number(Column column, double value) {
        return text(column, JsonFields.number(value));
    }

    FindingRow number(Column column, OptionalDouble value) {
        return value.isPresent() ? number(column, value.getAsDouble()) : this;
    }

    /** The ends of an interval of newtons; one that is not known stays empty. */
    FindingRow ends(Column low, Column high, Interval interval) {
        return number(low, interval.lowNewtons()).number(high, interval.highNewtons());
    }

    FindingRow ends(Column low, Column high, Bounds bounds) {
        return number(low, bounds.low()).number(high, bounds.high());
    }

    /** Where the row's tension lies, and what makes that widest. */
    FindingRow within(Interval tension) {
        tension.largest().ifPresent(cause -> text(Column.LARGEST_CAUSE, cause.word()));
        return ends(Column.TENSION_LOW_N, Column.TENSION_HIGH_N, tension);
    }

    /** The same, and its share. */
    FindingRow within(Interval tension, Bounds share) {
        return within(tension).ends(Column.SHARE_LOW, Column.SHARE_HIGH, share);
    }

    FindingRow flag(Column column, boolean yes) {
        return text(column, String.valueOf(yes));
    }

    FindingRow known(Column column, Known known) {
        return known == Known.UNKNOWN ? this : flag(column, known == Known.YES);
    }

    /** A tension and the limit that it is compared with. */
    FindingRow tension(double newtons, double share, Entry.Against against) {
        return number(Column.TENSION_N, newtons)
                .number(Column.SHARE, share)
                .text(Column.HOOKUP, against.hookup())
                .number(Column.LIMIT_N, against.newtons())
                .flag(Column.LIMIT_IS_AT_MOST, against.isAtMost())
                .flag(Column.HOOKUP_ASSUMED, against.assumed());
    }

    FindingRow cuts(boolean hasGap, boolean cutByGap, boolean cutByEnd) {
        return flag(Column.HAS_GAP, hasGap).flag(Column.CUT_BY_GAP, cutByGap).flag(Column.CUT_BY_END, cutByEnd);
    }
}
