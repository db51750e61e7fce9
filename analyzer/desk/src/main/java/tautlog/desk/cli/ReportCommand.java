package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.drawing.ReportDrawings;
import tautlog.desk.exporting.FindingTable;
import tautlog.desk.gear.StudiedGear;
import tautlog.desk.page.Document;
import tautlog.desk.page.Drawings;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.ReportPage;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TextPage;
import tautlog.desk.report.JsonReport;
import tautlog.desk.report.Report;
import tautlog.desk.service.KnownGear;
import tautlog.desk.service.LedgerDoubts;
import tautlog.quantity.ForceUnit;
import tautlog.recording.RecordingException;
import tautlog.rig.Band;
import tautlog.rig.Rig;
import tautlog.service.Ledger;

/** What was pulled, what was too much, what happened, how far to trust it. */
@Command(
        name = "report",
        headerHeading = "Examples:%n"
                + "  tautlog report recordings/ --html day.html%n"
                + "  tautlog report recordings/ --rig thin-choker.toml --fail-on past-wll%n"
                + "%n",
        header = "What was pulled, what was too much, what happened, how far to trust it.",
        description = {
            "",
            "Tells what was pulled, what was too much, shocks, jolts, drops, stalls, hours, and how",
            "far to trust it. Everything is worked out from the counts again. With another rig,",
            "calibration or hookup than the day's the report says WHAT IF.",
            "",
            "What cannot be read is left out and named. Exit 0: done. 1: done, and --fail-on was",
            "reached. 3: a recording, an outing or a line of the ledger was left out, or no recording",
            "could be read.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ReportCommand implements Callable<Integer>, Inked {
    /** Chosen: more names on every sheet would push the page's own text away. */
    private static final int MOST_NAMES = 3;

    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--rig", paramLabel = "FILE", description = "Another rig than the one stored: what if.")
    private @Nullable Path rig;

    @Option(
            names = "--calibration",
            paramLabel = "FILE",
            description = "Another calibration of the load cell than the one stored: what if.")
    private @Nullable Path calibration;

    @Option(names = "--hookup", paramLabel = "ID", description = "Take this hookup to have been on all the time.")
    private @Nullable String hookup;

    @Option(
            names = "--from",
            paramLabel = "T",
            description = "Only what ends at T or later (ISO 8601; local without zone).")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "T", description = "Only what starts before T.")
    private @Nullable String to;

    @Option(
            names = "--html",
            paramLabel = "F",
            description = "Write a page with drawings too; - for the standard output.")
    private @Nullable String html;

    @Option(names = "--pdf", paramLabel = "F", description = "Write the same page as PDF too.")
    private Optional<String> pdf = Optional.empty();

    @Option(
            names = "--created",
            paramLabel = "T",
            description =
                    "Creation time that the PDF states, instead of now: the same input then gives the same bytes.")
    private Optional<String> created = Optional.empty();

    @Option(
            names = "--csv",
            paramLabel = "F",
            description = "Write the findings as a table too; - for the standard output.")
    private @Nullable String csv;

    @Option(
            names = "--fail-on",
            paramLabel = "BAND",
            description = "Exit 1 when an overload reached past-wll, past-proof or past-breaking.")
    private @Nullable String failOn;

    @Option(
            names = "--ledger",
            paramLabel = "F",
            description = "The ledger: which gear is still out of service is told.")
    private @Nullable Path ledger;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the rig's.")
    private @Nullable String units;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the page instead of this computer's.")
    private @Nullable String zone;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException, QuestionException {
        refuseTwoDocuments();
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        Optional<Band> failing = band();
        Optional<ForceUnit> asked = units == null ? Optional.empty() : Optional.of(ScreenUnit.of("--units", units));
        Question question = question(at);
        Optional<Ledger> written =
                ledger == null ? Optional.empty() : Optional.of(NamedLedger.read(ledger, at, Instant.now()));
        Optional<PdfFile> paper = PdfFile.asked(pdf, created);
        try (History history = History.open(files)) {
            Analysis analysis =
                    Watched.analysis(history, question, ink, spec.commandLine().getErr());
            Screen screen = Screen.of(analysis.report(), asked.orElseGet(() -> unit(analysis)), at);
            Optional<StudiedGear> gear = gear(analysis, written, String.valueOf(ledger), at);
            LedgerDoubts doubts =
                    new LedgerDoubts(written.orElse(Ledger.EMPTY), KnownGear.ofWinches(winches(analysis)));
            write(analysis, screen, new OfGear(gear, doubts), paper);
            return exitCode(analysis.report(), written.orElse(Ledger.EMPTY), failing);
        }
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

    private Question question(ZoneId at) throws IOException, UsageException, ConfigException {
        Optional<Rig> other =
                rig == null ? Optional.empty() : Optional.of(RigSource.read(rig).rig());
        Optional<Instant> start = instant("--from", from, at);
        Optional<Instant> end = instant("--to", to, at);
        if (start.isPresent() && end.isPresent() && !start.get().isBefore(end.get())) {
            throw new UsageException("--to: " + to + " is not after --from " + from + ".\n  Give a later time.");
        }
        return new Question(other, Optional.ofNullable(hookup), calibration(), start, end);
    }

    private Optional<CellCalibration> calibration() throws IOException, UsageException, ConfigException {
        return calibration == null ? Optional.empty() : Optional.of(GivenCalibration.read(calibration));
    }

    private static Optional<Instant> instant(String option, @Nullable String text, ZoneId at) throws UsageException {
        return text == null ? Optional.empty() : Optional.of(LocalTime.instant(option, text, at));
    }

    private Optional<Band> band() throws UsageException {
        if (failOn == null) {
            return Optional.empty();
        }
        for (Band band : Band.values()) {
            if (band.word().equals(failOn)) {
                return Optional.of(band);
            }
        }
        throw new UsageException(
                "--fail-on: \"" + failOn + "\" is not a band.\n  Allowed: past-wll, past-proof," + " past-breaking.");
    }

    static ForceUnit unit(Analysis analysis) {
        return analysis.studies().isEmpty()
                ? ForceUnit.KN
                : analysis.studies().get(0).rig().units();
    }

    static Set<String> winches(Analysis analysis) {
        return analysis.studies().stream().map(study -> study.member().winch()).collect(Collectors.toSet());
    }

    /** What the ledger tells, and what of it was not taken. */
    private record OfGear(Optional<StudiedGear> studied, LedgerDoubts doubts) {}

    /** Empty without a ledger, or under WHAT IF. */
    private static Optional<StudiedGear> gear(Analysis analysis, Optional<Ledger> written, String name, ZoneId at)
            throws RecordingException {
        return written.isPresent() && analysis.report().whatIf().isEmpty()
                ? Optional.of(StudiedGear.of(analysis.studies(), written.get(), name, at))
                : Optional.empty();
    }

    private static Document.Section section(Analysis analysis, Screen screen, Optional<StudiedGear> gear) {
        return gear.map(studied -> studied.section(screen))
                .orElseGet(() -> analysis.report().whatIf().isEmpty()
                        ? OverloadedGear.withoutLedger()
                        : OverloadedGear.whatIf());
    }

    private void write(Analysis analysis, Screen screen, OfGear gear, Optional<PdfFile> paper)
            throws IOException, UsageException {
        PrintWriter out = spec.commandLine().getOut();
        Document.Section section = section(analysis, screen, gear.studied());
        boolean taken = (html != null && Output.isStandard(html)) || (csv != null && Output.isStandard(csv));
        if (json) {
            out.print(JsonReport.render(
                    analysis.report(),
                    gear.studied().map(StudiedGear::out),
                    gear.doubts().sentences()));
        } else if (!taken) {
            out.print(TextPage.render(
                    gear.doubts()
                            .onTopOf(ReportPage.of(
                                    analysis.report(), screen, Drawings.NONE, ReportPage.Extent.DIGEST, section)),
                    ink));
        }
        out.flush();
        if (html != null || paper.isPresent()) {
            Drawings drawings = ReportDrawings.of(analysis, screen);
            Document page = gear.doubts()
                    .onTopOf(ReportPage.of(analysis.report(), screen, drawings, ReportPage.Extent.EVERYTHING, section));
            if (html != null) {
                file("--html", html, HtmlPage.render(page));
            }
            if (paper.isPresent()) {
                paper.get().write(page, head(page, analysis.report()));
            }
        }
        if (csv != null) {
            file("--csv", csv, FindingTable.render(analysis.report()));
        }
    }

    /** Which recordings, and the last link of the latest. */
    private static List<String> head(Document page, Report report) {
        List<String> names = report.recordings().stream()
                .map(source -> String.valueOf(Path.of(source.file()).getFileName()))
                .toList();
        List<String> lines = new ArrayList<>();
        lines.add(page.title() + " · " + String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())))
                + (names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " more recordings" : ""));
        report.trust().lastLink().ifPresent(link -> lines.add("Last link " + link));
        return lines;
    }

    private void file(String option, String target, String text) throws IOException, UsageException {
        try (Writer writer = Output.open(option, target, spec.commandLine().getOut())) {
            writer.write(text);
        }
    }

    private int exitCode(Report report, Ledger written, Optional<Band> failing) {
        int whole = Exits.whole(report.leftOut(), written, spec.commandLine().getErr());
        boolean found = failing.isPresent()
                && report.overloads().stream()
                        .anyMatch(overload -> overload.band().compareTo(failing.get()) >= 0);
        return found ? Exits.FOUND : whole;
    }
}
