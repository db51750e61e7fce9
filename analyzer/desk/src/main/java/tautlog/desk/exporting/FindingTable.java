package tautlog.desk.exporting;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tautlog.desk.exporting.FindingRow.Column;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Report;
import tautlog.rig.Band;

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
                .setHeader(Stream.of(Column.values())
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
        return new FindingRow(kind, entry).flag(Column.WHAT_IF, !report.whatIf().isEmpty());
    }

    private FindingRow pull(Entry.Pull pull) {
        return row("pull", pull)
                .tension(pull.peakNewtons(), pull.share(), pull.against())
                .number(Column.SECONDS, pull.durationSeconds())
                .text(
                        Column.DETAIL,
                        "mean_n=" + JsonFields.number(pull.meanNewtons())
                                + (report.trust().isFromSaidLive(pull.start()) ? " from_said_live" : ""))
                .flag(Column.AT_LEAST, pull.atLeast())
                .known(Column.HELD, pull.held())
                .cuts(pull.hasGap(), pull.cutByGap(), pull.cutByEnd())
                .within(pull.peakInterval(), pull.shareBounds())
                .known(Column.MAY_BE_OVER, pull.overLimit())
                .number(Column.MEAN_N, pull.meanNewtons())
                .ends(Column.MEAN_LOW_N, Column.MEAN_HIGH_N, pull.meanInterval())
                .number(Column.IMPULSE_NS, pull.impulseNewtonSeconds())
                .ends(Column.IMPULSE_LOW_NS, Column.IMPULSE_HIGH_NS, pull.impulseBounds());
    }

    private FindingRow overload(Entry.Overload overload) {
        return row("overload", overload)
                .tension(overload.peakNewtons(), overload.share(), overload.against())
                .text(Column.BAND, overload.band().word())
                .number(Column.SECONDS, overload.aboveSeconds())
                .text(Column.DETAIL, detail(overload))
                .flag(Column.AT_LEAST, overload.atLeast())
                .cuts(overload.hasGap(), overload.cutByGap(), overload.cutByEnd())
                .within(overload.peakInterval(), overload.shareBounds())
                .text(Column.BAND_MAY_BE, overload.bandMayBe().map(Band::word).orElse(""));
    }

    private static String detail(Entry.Overload overload) {
        return "governing=" + overload.against().governing() + (overload.atLeast() ? " at_least" : "");
    }

    private FindingRow shock(Entry.Shock shock) {
        return row("shock", shock)
                .tension(shock.peakNewtons(), shock.share(), shock.against())
                .number(Column.SECONDS, shock.riseSeconds())
                .text(Column.DETAIL, shock.resolved() ? "resolved" : "too fast for the instrument")
                .flag(Column.AT_LEAST, shock.atLeast())
                .flag(Column.HAS_GAP, shock.hasGap())
                .within(shock.peakInterval(), shock.shareBounds())
                .number(Column.SETTLED_N, shock.settledNewtons())
                .ends(Column.SETTLED_LOW_N, Column.SETTLED_HIGH_N, shock.settledInterval())
                .number(Column.FACTOR, shock.factor())
                .ends(Column.FACTOR_LOW, Column.FACTOR_HIGH, shock.factorBounds())
                .number(Column.RISE_N_PER_S, shock.riseNewtonsPerSecond())
                .ends(Column.RISE_LOW_N_PER_S, Column.RISE_HIGH_N_PER_S, shock.riseRateBounds());
    }

    private FindingRow jolt(Entry.Jolt jolt) {
        return row("jolt", jolt)
                .tension(jolt.peakNewtons(), jolt.share(), jolt.against())
                .number(Column.SECONDS, jolt.riseSeconds())
                .text(Column.DETAIL, "rise_n=" + JsonFields.number(jolt.riseNewtons()))
                .flag(Column.AT_LEAST, jolt.atLeast())
                .within(jolt.peakInterval(), jolt.shareBounds())
                .number(Column.RISE_N, jolt.riseNewtons())
                .ends(Column.RISE_LOW_N, Column.RISE_HIGH_N, jolt.riseInterval());
    }

    private FindingRow drop(Entry.Drop drop) {
        return row("drop", drop)
                .number(Column.TENSION_N, drop.beforeNewtons())
                .number(Column.SECONDS, drop.fallSeconds())
                .text(
                        Column.DETAIL,
                        "after_n=" + JsonFields.number(drop.afterNewtons()) + " shaft=" + JsonReport.word(drop.shaft()))
                .flag(Column.HOOKUP_ASSUMED, drop.against().assumed())
                .known(Column.STAYS_SLACK, drop.staysSlack())
                .known(Column.CLUTCH, drop.clutch())
                .known(Column.BRAKE, drop.brake())
                .within(drop.beforeInterval())
                .number(Column.AFTER_N, drop.afterNewtons())
                .ends(Column.AFTER_LOW_N, Column.AFTER_HIGH_N, drop.afterInterval());
    }

    private FindingRow stall(Entry.Stall stall) {
        return row("stall", stall)
                .number(Column.TENSION_N, stall.tensionNewtons())
                .number(Column.SECONDS, length(stall))
                .text(
                        Column.DETAIL,
                        "least_rpm=" + JsonFields.number(stall.leastRpm()) + " ended=" + JsonReport.word(stall.ended()))
                .within(stall.tensionInterval());
    }

    private FindingRow trouble(Entry.Trouble trouble) {
        return row(JsonReport.word(trouble.trouble()), trouble).number(Column.SECONDS, length(trouble));
    }

    private static double length(Entry entry) {
        return entry.end().seconds() - entry.start().seconds();
    }
}
