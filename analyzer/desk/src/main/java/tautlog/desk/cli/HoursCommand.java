package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.hours.HoursCsv;
import tautlog.desk.hours.HoursDrawings;
import tautlog.desk.hours.HoursJson;
import tautlog.desk.hours.HoursPage;
import tautlog.desk.hours.HoursTable;
import tautlog.desk.hours.Period;
import tautlog.desk.hours.Row;
import tautlog.desk.hours.UnloggedWork;
import tautlog.desk.page.Document;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.desk.report.LeftOut;
import tautlog.desk.service.KnownGear;
import tautlog.desk.service.LedgerDoubts;
import tautlog.desk.use.OutingUse;
import tautlog.desk.use.UseHistory;
import tautlog.service.Ledger;

/** Hour meters and load bands. */
@Command(
        name = "hours",
        headerHeading = "Examples:%n"
                + "  tautlog hours recordings/%n"
                + "  tautlog hours recordings/ season-2025/ --by month --html hours.html%n"
                + "%n",
        header = "Hour meters and load bands, by outing, day, month, season and in all.",
        description = {
            "",
            "Meters of shaft and pulls and the time in each band of the limit. No time is counted",
            "twice when recordings were copied or overlap; what is not known stands apart. What was",
            "read is remembered, so that a second run reads only what is new, after Ctrl-C too.",
            "Exit 3 when a recording, an outing or a block of one, or a line of the ledger could",
            "not be read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class HoursCommand implements Callable<Integer>, Inked {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--by", paramLabel = "WHAT", description = "Only outing, day, month or season.")
    private @Nullable String by;

    @Option(names = "--season-from", paramLabel = "MM-DD", description = "A season begins on this day, not 01-01.")
    private @Nullable String seasonFrom;

    @Option(
            names = "--from",
            paramLabel = "T",
            description = "Only outings that began at T or later (ISO 8601; local without zone).")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "T", description = "Only outings that began before T.")
    private @Nullable String to;

    @Option(
            names = "--ledger",
            paramLabel = "FILE",
            description = "Add the hours worked unlogged that this ledger tells to the meters.")
    private @Nullable Path ledger;

    @Option(
            names = "--html",
            paramLabel = "F",
            description = "Write a page with drawings too; - for the standard output.")
    private @Nullable String html;

    @Option(
            names = "--csv",
            paramLabel = "F",
            description = "Write a table, by outing or as --by says, too; - for the standard output.")
    private @Nullable String csv;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the days instead of this computer's.")
    private @Nullable String zone;

    @Mixin
    private UseOptions use = new UseOptions();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException {
        refuseTwoDocuments();
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        Optional<Period> period = period();
        MonthDay season = season();
        Ledger kept = ledger == null ? Ledger.EMPTY : NamedLedger.read(ledger, at, Instant.now());
        Optional<Instant> start = from == null ? Optional.empty() : Optional.of(LocalTime.instant("--from", from, at));
        Optional<Instant> end = to == null ? Optional.empty() : Optional.of(LocalTime.instant("--to", to, at));
        UseHistory history =
                UseHistory.of(files, use.settings(ink, spec.commandLine().getErr()));
        boolean whole = start.isEmpty() && end.isEmpty();
        List<OutingUse> asked = history.outings().stream()
                .filter(one -> whole || began(one, start.orElse(Instant.MIN), end.orElse(Instant.MAX)))
                .toList();
        HoursTable table = HoursTable.of(asked, at, season, whole ? HoursTable.Extent.WHOLE : HoursTable.Extent.PART);
        UnloggedWork unlogged =
                UnloggedWork.of(kept.entries(), asked, start.orElse(Instant.MIN), end.orElse(Instant.MAX));
        Shown shown =
                new Shown(table.with(unlogged.sum()), notes(history, unlogged), look(at, period, List.of()), period);
        LedgerDoubts doubts = new LedgerDoubts(kept, KnownGear.ofWinches(winches(history)));
        print(shown, doubts, history.leftOut());
        if (html != null) {
            HoursPage.Look drawn = look(at, period, HoursDrawings.of(asked, table, history.latestRigs()));
            file("--html", html, HtmlPage.render(doubts.onTopOf(HoursPage.of(shown.table(), drawn, shown.notes()))));
        }
        return Exits.whole(history.leftOut(), kept, spec.commandLine().getErr());
    }

    private void refuseTwoDocuments() throws UsageException {
        List<String> standard = new ArrayList<>();
        if (json) {
            standard.add("--json");
        }
        if (html != null && Output.isStandard(html)) {
            standard.add("--html -");
        }
        if (csv != null && Output.isStandard(csv)) {
            standard.add("--csv -");
        }
        if (standard.size() > 1) {
            throw new UsageException(String.join(" and ", standard)
                    + ": only one of them can go to the standard output.\n  Give the others a file.");
        }
    }

    private static Set<String> winches(UseHistory history) {
        return history.outings().stream().map(use -> use.at().winch()).collect(Collectors.toSet());
    }

    private static boolean began(OutingUse use, Instant start, Instant end) {
        return use.start().map(at -> !at.isBefore(start) && at.isBefore(end)).orElse(false);
    }

    /** Empty for outings, and when nothing was asked for. */
    private Optional<Period> period() throws UsageException {
        if (by == null || by.equals("outing")) {
            return Optional.empty();
        }
        for (Period period : Period.values()) {
            if (period.name().toLowerCase(Locale.ROOT).equals(by)) {
                return Optional.of(period);
            }
        }
        throw new UsageException(
                "--by: \"" + by + "\" is not a way to add up.\n  Allowed: outing, day, month, season.");
    }

    private MonthDay season() throws UsageException {
        try {
            return seasonFrom == null ? MonthDay.of(1, 1) : MonthDay.parse("--" + seasonFrom);
        } catch (DateTimeException e) {
            throw new UsageException("--season-from: \"" + seasonFrom
                    + "\" is not a day of the year.\n  Write 10-01 for" + " 1 October.");
        }
    }

    /** What is told, and how. */
    private record Shown(HoursTable table, List<String> notes, HoursPage.Look look, Optional<Period> period) {}

    private void print(Shown shown, LedgerDoubts doubts, LeftOut leftOut) throws IOException, UsageException {
        PrintWriter out = spec.commandLine().getOut();
        boolean taken = (html != null && Output.isStandard(html)) || (csv != null && Output.isStandard(csv));
        if (json) {
            out.print(HoursJson.render(shown.table(), doubts.sentences(), leftOut));
        } else if (!taken) {
            out.print(TextPage.render(
                    doubts.onTopOf(HoursPage.of(shown.table(), shown.look(), shown.notes())), Ink.PLAIN));
        }
        out.flush();
        if (csv != null) {
            List<Row> rows =
                    shown.period().map(shown.table()::rows).orElse(shown.table().outings());
            file("--csv", csv, HoursCsv.render(rows));
        }
    }

    private HoursPage.Look look(ZoneId at, Optional<Period> period, List<Document.Section> further) {
        if (by == null) {
            return new HoursPage.Look(at, true, List.of(Period.DAY), further);
        }
        return new HoursPage.Look(at, period.isEmpty(), period.stream().toList(), further);
    }

    private void file(String option, String target, String text) throws IOException, UsageException {
        try (Writer writer = Output.open(option, target, spec.commandLine().getOut())) {
            writer.write(text);
        }
    }

    private List<String> notes(UseHistory history, UnloggedWork unlogged) {
        List<String> notes = new ArrayList<>();
        notes.addAll(unlogged.notes());
        history.leftOut().sentences().forEach(sentence -> notes.add("Left out: " + sentence));
        notes.addAll(history.notes());
        if (from != null || to != null) {
            notes.add(
                    "Only outings that began in the time asked for are added up, each with its whole length; those without a"
                            + " clock are left out, and so are opening readings.");
        }
        return notes;
    }
}
