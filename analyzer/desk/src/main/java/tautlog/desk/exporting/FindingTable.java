package tautlog.desk.exporting;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tautlog.desk.report.Entry;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.detect.Known;

/** Writes the findings of a {@link Report} as a table, one row each in the order of time; an unknown cell is empty. */
public final class FindingTable {
    private static final String[] HEAD = {
        "kind",
        "start",
        "end",
        "tension_n",
        "share",
        "hookup",
        "limit_n",
        "limit_is_at_most",
        "band",
        "seconds",
        "detail",
        "what_if",
        "hookup_assumed",
        "at_least",
        "held",
        "has_gap",
        "cut_by_gap",
        "cut_by_end",
        "stays_slack",
        "clutch",
        "brake"
    };

    private FindingTable() {}

    /** A row and when it starts. */
    private record Row(Entry entry, List<String> cells) {
        Moment start() {
            return entry.start();
        }
    }

    public static String render(Report report) {
        List<Row> rows = new ArrayList<>();
        Stream.of(
                        report.pulls().stream().map(FindingTable::pull),
                        report.overloads().stream().map(FindingTable::overload),
                        report.shocks().stream().map(FindingTable::shock),
                        report.jolts().stream().map(FindingTable::jolt),
                        report.drops().stream().map(FindingTable::drop),
                        report.stalls().stream().map(FindingTable::stall),
                        report.trouble().stream().map(FindingTable::trouble))
                .flatMap(stream -> stream)
                .sorted(Comparator.comparing(Row::start))
                .forEach(rows::add);
        StringWriter text = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(
                text,
                CSVFormat.DEFAULT
                        .builder()
                        .setRecordSeparator("\n")
                        .setHeader(HEAD)
                        .get())) {
            for (Row row : rows) {
                List<String> cells = new ArrayList<>(row.cells());
                cells.add(String.valueOf(!report.whatIf().isEmpty()));
                cells.addAll(marks(row.entry()));
                printer.printRecord(cells);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.toString();
    }

    private static Row pull(Entry.Pull pull) {
        return row(
                "pull",
                pull,
                pull.peakNewtons(),
                pull.share(),
                pull.against(),
                "",
                pull.durationSeconds(),
                "mean_n=" + JsonFields.number(pull.meanNewtons()));
    }

    private static Row overload(Entry.Overload overload) {
        return row(
                "overload",
                overload,
                overload.peakNewtons(),
                overload.share(),
                overload.against(),
                overload.band().word(),
                overload.aboveSeconds(),
                "governing=" + overload.against().governing() + (overload.atLeast() ? " at_least" : ""));
    }

    private static Row shock(Entry.Shock shock) {
        return row(
                "shock",
                shock,
                shock.peakNewtons(),
                shock.share(),
                shock.against(),
                "",
                shock.riseSeconds(),
                shock.resolved() ? "resolved" : "too fast for the instrument");
    }

    private static Row jolt(Entry.Jolt jolt) {
        return row(
                "jolt",
                jolt,
                jolt.peakNewtons(),
                jolt.share(),
                jolt.against(),
                "",
                jolt.riseSeconds(),
                "rise_n=" + JsonFields.number(jolt.riseNewtons()));
    }

    private static Row drop(Entry.Drop drop) {
        return bare(
                "drop",
                drop,
                OptionalDouble.of(drop.beforeNewtons()),
                OptionalDouble.of(drop.fallSeconds()),
                "after_n=" + JsonFields.number(drop.afterNewtons()) + " shaft=" + JsonReport.word(drop.shaft()));
    }

    private static Row stall(Entry.Stall stall) {
        return bare(
                "stall",
                stall,
                OptionalDouble.of(stall.tensionNewtons()),
                OptionalDouble.of(stall.end().seconds() - stall.start().seconds()),
                "least_rpm=" + JsonFields.number(stall.leastRpm()) + " ended=" + JsonReport.word(stall.ended()));
    }

    private static Row trouble(Entry.Trouble trouble) {
        return bare(
                JsonReport.word(trouble.trouble()),
                trouble,
                OptionalDouble.empty(),
                OptionalDouble.of(trouble.end().seconds() - trouble.start().seconds()),
                "");
    }

    private static Row row(
            String kind,
            Entry entry,
            double newtons,
            double share,
            Entry.Against against,
            String band,
            double seconds,
            String detail) {
        return new Row(
                entry,
                List.of(
                        kind,
                        time(entry.start()),
                        time(entry.end()),
                        JsonFields.number(newtons),
                        JsonFields.number(share),
                        against.hookup(),
                        JsonFields.number(against.newtons()),
                        String.valueOf(against.isAtMost()),
                        band,
                        JsonFields.number(seconds),
                        detail));
    }

    private static Row bare(String kind, Entry entry, OptionalDouble newtons, OptionalDouble seconds, String detail) {
        return new Row(
                entry,
                List.of(
                        kind,
                        time(entry.start()),
                        time(entry.end()),
                        cell(newtons),
                        "",
                        "",
                        "",
                        "",
                        "",
                        cell(seconds),
                        detail));
    }

    /** What the columns behind {@code what_if} hold; empty where it does not apply or is not known. */
    private static List<String> marks(Entry entry) {
        if (entry instanceof Entry.Pull pull) {
            return List.of(
                    flag(pull.against().assumed()),
                    "",
                    known(pull.held()),
                    flag(pull.hasGap()),
                    flag(pull.cutByGap()),
                    flag(pull.cutByEnd()),
                    "",
                    "",
                    "");
        } else if (entry instanceof Entry.Overload overload) {
            return List.of(
                    flag(overload.against().assumed()),
                    flag(overload.atLeast()),
                    "",
                    flag(overload.hasGap()),
                    flag(overload.cutByGap()),
                    flag(overload.cutByEnd()),
                    "",
                    "",
                    "");
        } else if (entry instanceof Entry.Shock shock) {
            return List.of(flag(shock.against().assumed()), "", "", flag(shock.hasGap()), "", "", "", "", "");
        } else if (entry instanceof Entry.Jolt jolt) {
            return List.of(flag(jolt.against().assumed()), "", "", "", "", "", "", "", "");
        } else if (entry instanceof Entry.Drop drop) {
            return List.of(
                    flag(drop.against().assumed()),
                    "",
                    "",
                    "",
                    "",
                    "",
                    known(drop.staysSlack()),
                    known(drop.clutch()),
                    known(drop.brake()));
        }
        return List.of("", "", "", "", "", "", "", "", "");
    }

    private static String flag(boolean yes) {
        return String.valueOf(yes);
    }

    private static String known(Known known) {
        return known == Known.UNKNOWN ? "" : flag(known == Known.YES);
    }

    private static String cell(OptionalDouble value) {
        return value.isPresent() ? JsonFields.number(value.getAsDouble()) : "";
    }

    private static String time(Moment moment) {
        return Optional.of(moment).flatMap(Moment::utc).map(JsonFields::time).orElse("");
    }
}
