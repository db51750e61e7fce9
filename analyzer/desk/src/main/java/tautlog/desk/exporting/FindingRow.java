package tautlog.desk.exporting;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.Moment;
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
        BRAKE
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
