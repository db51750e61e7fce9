package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.analysis.Study;
import tautlog.desk.incident.Incident;
import tautlog.desk.incident.IncidentJson;
import tautlog.desk.incident.IncidentPage;
import tautlog.desk.incident.IncidentStudy;
import tautlog.desk.incident.LedgerInspections;
import tautlog.desk.incident.SavedNotes;
import tautlog.desk.incident.Window;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.notes.NoteLines;
import tautlog.desk.page.Document;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TextPage;
import tautlog.desk.service.KnownGear;
import tautlog.desk.service.LedgerDoubts;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;
import tautlog.service.Complaint;
import tautlog.service.Ledger;
import tautlog.service.LedgerView;

/** What happened at one moment, for who was not there. */
@Command(
        name = "incident",
        headerHeading = "Examples:%n"
                + "  tautlog incident recordings/ --at 2026-05-04T14:31:20 --pdf incident.pdf%n"
                + "  tautlog incident recordings/ --at 2026-05-04T14:31 --around 2min --against last-links.txt%n"
                + "  tautlog incident undated-3.tautlog --outing 1 --at 125.4s%n"
                + "%n",
        header = "What happened at one moment: what broke, by how much, how sure, what now.",
        description = {
            "",
            "Tells of the worst that was found near one moment: sentences in the order of time, the",
            "trace, every item's load, driveline, gear, what the sensors could not see, what the",
            "recording is worth as evidence, and what was like it in the other recordings given.",
            "",
            "Exit 0: done. 3: nothing was being recorded in the time looked at (the report says what",
            "is nearest), or something could not be read.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class IncidentCommand implements Callable<Integer>, Inked {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them: the season.")
    private List<Path> files = List.of();

    @Option(
            names = "--at",
            required = true,
            paramLabel = "T",
            description = "The moment (ISO 8601; local without zone); with --outing seconds from its start.")
    private String at = "";

    @Option(
            names = "--outing",
            paramLabel = "N",
            description = "The outing that --at counts from, where no clock was known: as tautlog report of the same"
                    + " FILES numbers it, 1 for a single one.")
    private Optional<Integer> outing = Optional.empty();

    @Option(
            names = "--around",
            paramLabel = "TIME",
            description = "How long before and after it: 30s, 2min. Default 30s.")
    private String around = "30s";

    @Option(names = "--rig", paramLabel = "FILE", description = "Another rig than the one stored: what if.")
    private Optional<Path> rig = Optional.empty();

    @Option(names = "--hookup", paramLabel = "ID", description = "Take this hookup to have been on all the time.")
    private Optional<String> hookup = Optional.empty();

    @Option(
            names = "--calibration",
            paramLabel = "FILE",
            description = "Another calibration of the load cell than the one stored: what if.")
    private Optional<Path> calibration = Optional.empty();

    @Option(
            names = "--notes",
            paramLabel = "F",
            description = "Notes kept beside the recordings. Default: notes.jsonl of the folder.")
    private Optional<Path> notes = Optional.empty();

    @Option(names = "--ledger", paramLabel = "F", description = "The ledger of inspections, ledger.jsonl.")
    private Optional<Path> ledger = Optional.empty();

    @Option(
            names = "--against",
            paramLabel = "F",
            description = "A text with links that were kept elsewhere, as the logger writes it on a drive.")
    private Optional<Path> against = Optional.empty();

    @Option(names = "--html", paramLabel = "F", description = "Write a page with drawings too.")
    private Optional<String> html = Optional.empty();

    @Option(names = "--pdf", paramLabel = "F", description = "Write the same page as PDF too.")
    private Optional<String> pdf = Optional.empty();

    @Option(
            names = "--created",
            paramLabel = "T",
            description =
                    "Creation time that the PDF states, instead of now: the same input then gives the same bytes.")
    private Optional<String> created = Optional.empty();

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the rig's.")
    private Optional<String> units = Optional.empty();

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the page instead of this computer's.")
    private Optional<String> zone = Optional.empty();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException, QuestionException {
        ZoneId local = zone.isPresent() ? LocalTime.zone("--zone", zone.get()) : ZoneId.systemDefault();
        AskedMoment.check(at, number(), local);
        double aroundSeconds = Around.seconds("--around", around);
        Optional<ForceUnit> asked =
                units.isPresent() ? Optional.of(ScreenUnit.of("--units", units.get())) : Optional.empty();
        Optional<Rig> other =
                rig.isPresent() ? Optional.of(RigSource.read(rig.get()).rig()) : Optional.empty();
        Optional<CellCalibration> cell =
                calibration.isPresent() ? Optional.of(GivenCalibration.read(calibration.get())) : Optional.empty();
        Question question = new Question(other, hookup, cell, Optional.empty(), Optional.empty());
        Optional<Ledger> written = ledger.isPresent()
                ? Optional.of(NamedLedger.read(ledger.get(), local, Instant.now()))
                : Optional.empty();
        SavedNotes kept = savedNotes();
        List<Incident.KeptLink> links = links();
        Optional<PdfFile> paper = PdfFile.asked(pdf, created);
        refuseTwoDocuments();
        try (History history = History.open(files)) {
            Analysis analysis =
                    Watched.analysis(history, question, ink, spec.commandLine().getErr());
            Screen screen = Screen.of(analysis.report(), asked.orElseGet(() -> ReportCommand.unit(analysis)), local);
            Window window = new Window(AskedMoment.of(at, number(), local, analysis.studies()), aroundSeconds);
            IncidentStudy.Beside beside =
                    new IncidentStudy.Beside(kept, written.map(read -> inspections(read, window, local)), links, cell);
            Incident incident = IncidentStudy.of(analysis, window, beside, screen);
            LedgerDoubts doubts = new LedgerDoubts(
                    written.orElse(Ledger.EMPTY), KnownGear.ofWinches(ReportCommand.winches(analysis)));
            write(incident, screen, doubts, paper);
            return exitCode(incident, written.orElse(Ledger.EMPTY), analysis.studies());
        }
    }

    private OptionalInt number() {
        return outing.map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    private static IncidentStudy.LedgerOf inspections(Ledger read, Window window, ZoneId local) {
        long unusable = read.complaints().stream()
                .filter(complaint -> complaint.weight() == Complaint.Weight.IGNORED)
                .count();
        // the ledger given is taken for that of the winch: an entry that names none is this one's
        return winch -> new LedgerInspections(new LedgerView(read, Set.of(winch)), unusable, winch, window.at(), local);
    }

    private SavedNotes savedNotes() throws IOException, UsageException {
        if (notes.isPresent()) {
            return SavedNotes.of(NoteLines.in(TextFile.read("--notes", notes.get(), "Give a file of notes.")));
        }
        NoteLines lines = NoteLines.NONE;
        boolean found = false;
        for (Path folder : files.stream().filter(Files::isDirectory).toList()) {
            NoteBook beside = new NoteBook(folder);
            found |= beside.exists();
            lines = lines.and(beside.lines());
        }
        return found ? SavedNotes.of(lines) : SavedNotes.NONE;
    }

    private List<Incident.KeptLink> links() throws IOException, UsageException {
        if (against.isEmpty()) {
            return List.of();
        }
        String keptIn = String.valueOf(against.get().getFileName());
        return KeptLinks.hold(KeptLinks.read(against.get()), GivenRecordings.in(files)).stream()
                .map(held -> new Incident.KeptLink(
                        keptIn, held.noted().file(), held.noted().link(), held.isContradicted(), held.sentence()))
                .toList();
    }

    private void write(Incident incident, Screen screen, LedgerDoubts doubts, Optional<PdfFile> paper)
            throws IOException, UsageException {
        Document page = doubts.onTopOf(IncidentPage.of(incident, screen));
        PrintWriter out = spec.commandLine().getOut();
        boolean taken = html.isPresent() && Output.isStandard(html.get());
        if (json) {
            out.print(IncidentJson.render(incident, screen, doubts.sentences()));
        } else if (!taken) {
            out.print(TextPage.render(page, ink));
        }
        out.flush();
        if (html.isPresent()) {
            try (Writer writer = Output.open("--html", html.get(), out)) {
                writer.write(HtmlPage.render(page));
            }
        }
        if (paper.isPresent()) {
            paper.get().write(page, head(page, incident));
        }
    }

    private void refuseTwoDocuments() throws UsageException {
        if (json && html.isPresent() && Output.isStandard(html.get())) {
            throw new UsageException("--json and --html -: only one of them can go to the standard output.\n"
                    + "  Give the other a file.");
        }
    }

    private static List<String> head(Document page, Incident incident) {
        List<String> lines = new ArrayList<>();
        lines.add(page.title()
                + incident.outing()
                        .map(outing -> " · " + Path.of(outing.file()).getFileName())
                        .orElse("") + " · " + incident.window().when().words());
        incident.outing()
                .ifPresent(outing -> lines.add("Last link " + outing.integrity().lastLink()));
        return lines;
    }

    private int exitCode(Incident incident, Ledger written, List<Study> studies) {
        PrintWriter err = spec.commandLine().getErr();
        int whole = Exits.whole(incident.report().leftOut(), written, err);
        boolean contradicted = incident.outing().stream()
                .flatMap(outing -> outing.integrity().kept().stream())
                .anyMatch(Incident.KeptLink::isContradicted);
        if (incident.outing().isEmpty()) {
            err.println("Nothing was being recorded at or near "
                    + incident.window().when().words() + "; the report says what is nearest.");
            if (incident.found().undated() > 0 && incident.window().at().isPresent()) {
                err.println(AskedMoment.undated(studies));
            }
            err.flush();
            return Exits.UNUSABLE;
        }
        return contradicted ? Exits.UNUSABLE : whole;
    }
}
