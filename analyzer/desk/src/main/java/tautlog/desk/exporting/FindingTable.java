package tautlog.desk.exporting;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Report;

/** Writes the findings of a {@link Report} as a table, one row each in the order of time; an unknown cell is empty. */
public final class FindingTable {
    private final Report report;

    private FindingTable(Report report) {
        this.report = report;
    }

    public static String render(Report report) {
        StringWriter text = new StringWriter();
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setRecordSeparator("\n")
                .setHeader(Stream.of(FindingRow.Column.values())
                        .map(column -> column.name().toLowerCase(Locale.ROOT))
                        .toArray(String[]::new))
                .get();
        try (CSVPrinter printer = new CSVPrinter(text, format)) {
            for (FindingRow row : new FindingTable(report).rows()) {
                printer.printRecord(row.cells());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.toString();
    }

    private Iterable<FindingRow> rows() {
        return Stream.of(
                        report.pulls().stream().map(this::pull),
                        report.overloads().stream().map(this::overload),
                        report.shocks().stream().map(this::shock),
                        report.jolts().stream().map(this::jolt),
                        report.drops().stream().map(this::drop),
                        report.stalls().stream().map(this::stall),
                        report.trouble().stream().map(this::trouble))
                .flatMap(stream -> stream)
                .sorted(Comparator.comparing(FindingRow::start))
                .toList();
    }

    private FindingRow row(String kind, Entry entry) {
        return new FindingRow(kind, entry)
                .flag(FindingRow.Column.WHAT_IF, !report.whatIf().isEmpty());
    }

    private FindingRow pull(Entry.Pull pull) {
        return row("pull", pull)
                .tension(pull.peakNewtons(), pull.share(), pull.against())
                .number(FindingRow.Column.SECONDS, pull.durationSeconds())
                .text(FindingRow.Column.DETAIL, "mean_n=" + JsonFields.number(pull.meanNewtons()))
                .flag(FindingRow.Column.AT_LEAST, pull.atLeast())
                .known(FindingRow.Column.HELD, pull.held())
                .cuts(pull.hasGap(), pull.cutByGap(), pull.cutByEnd());
    }

    private FindingRow overload(Entry.Overload overload) {
        return row("overload", overload)
                .tension(overload.peakNewtons(), overload.share(), overload.against())
                .text(FindingRow.Column.BAND, overload.band().word())
                .number(FindingRow.Column.SECONDS, overload.aboveSeconds())
                .text(FindingRow.Column.DETAIL, detail(overload))
                .flag(FindingRow.Column.AT_LEAST, overload.atLeast())
                .cuts(overload.hasGap(), overload.cutByGap(), overload.cutByEnd());
    }

    private static String detail(Entry.Overload overload) {
        return "governing=" + overload.against().governing() + (overload.atLeast() ? " at_least" : "");
    }

    private FindingRow shock(Entry.Shock shock) {
        return row("shock", shock)
                .tension(shock.peakNewtons(), shock.share(), shock.against())
                .number(FindingRow.Column.SECONDS, shock.riseSeconds())
                .text(FindingRow.Column.DETAIL, shock.resolved() ? "resolved" : "too fast for the instrument")
                .flag(FindingRow.Column.AT_LEAST, shock.atLeast())
                .flag(FindingRow.Column.HAS_GAP, shock.hasGap());
    }

    private FindingRow jolt(Entry.Jolt jolt) {
        return row("jolt", jolt)
                .tension(jolt.peakNewtons(), jolt.share(), jolt.against())
                .number(FindingRow.Column.SECONDS, jolt.riseSeconds())
                .text(FindingRow.Column.DETAIL, "rise_n=" + JsonFields.number(jolt.riseNewtons()))
                .flag(FindingRow.Column.AT_LEAST, jolt.atLeast());
    }

    private FindingRow drop(Entry.Drop drop) {
        return row("drop", drop)
                .number(FindingRow.Column.TENSION_N, drop.beforeNewtons())
                .number(FindingRow.Column.SECONDS, drop.fallSeconds())
                .text(
                        FindingRow.Column.DETAIL,
                        "after_n=" + JsonFields.number(drop.afterNewtons()) + " shaft=" + JsonReport.word(drop.shaft()))
                .flag(FindingRow.Column.HOOKUP_ASSUMED, drop.against().assumed())
                .known(FindingRow.Column.STAYS_SLACK, drop.staysSlack())
                .known(FindingRow.Column.CLUTCH, drop.clutch())
                .known(FindingRow.Column.BRAKE, drop.brake());
    }

    private FindingRow stall(Entry.Stall stall) {
        return row("stall", stall)
                .number(FindingRow.Column.TENSION_N, stall.tensionNewtons())
                .number(FindingRow.Column.SECONDS, length(stall))
                .text(
                        FindingRow.Column.DETAIL,
                        "least_rpm=" + JsonFields.number(stall.leastRpm()) + " ended="
                                + JsonReport.word(stall.ended()));
    }

    private FindingRow trouble(Entry.Trouble trouble) {
        return row(JsonReport.word(trouble.trouble()), trouble).number(FindingRow.Column.SECONDS, length(trouble));
    }

    private static double length(Entry entry) {
        return entry.end().seconds() - entry.start().seconds();
    }
}
