package tautlog.desk.page;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tautlog.desk.report.Report;

/** Puts a {@link Report} into words, what needs action first. Start here; each section is a class of its own. */
public final class ReportPage {
    private final Report report;
    private final Screen screen;
    private final Drawings drawings;

    private ReportPage(Report report, Screen screen, Drawings drawings) {
        this.report = report;
        this.screen = screen;
        this.drawings = drawings;
    }

    public static Document of(Report report, Screen screen, Drawings drawings) {
        return new ReportPage(report, screen, drawings).document();
    }

    private Document document() {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new ActionSection(report, screen).section());
        if (!drawings.days().isEmpty()) {
            sections.add(new Document.Section("The day at a glance", List.copyOf(drawings.days())));
        }
        sections.add(happened());
        if (!drawings.moments().isEmpty()) {
            sections.add(moments());
        }
        sections.add(new PullSection(report, screen).section());
        sections.add(new LimitSection(report, screen).section());
        sections.add(new HoursSection(report).section());
        TrustSection trust = new TrustSection(report, screen);
        sections.add(trust.section());
        sections.add(trust.unseen());
        sections.add(StandingText.section());
        return new Document(title(), subtitle(), banner(), sections);
    }

    private String title() {
        List<String> winches = report.recordings().stream()
                .map(Report.Source::winch)
                .distinct()
                .toList();
        return "Pull report: " + (winches.isEmpty() ? "no outing" : Screen.listed(winches));
    }

    private List<String> subtitle() {
        List<String> lines = new ArrayList<>();
        Optional<Instant> start = report.recordings().stream()
                .flatMap(source -> source.start().stream())
                .min(Comparator.naturalOrder());
        Optional<Instant> end = report.recordings().stream()
                .flatMap(source -> source.end().stream())
                .max(Comparator.naturalOrder());
        lines.add(
                start.isPresent() && end.isPresent()
                        ? screen.dateAndTime(start.get()) + " to " + screen.dateAndTime(end.get()) + ", "
                                + screen.zone().getId() + " time"
                        : report.recordings().isEmpty()
                                ? "Nothing that could be read was recorded."
                                : "No clock was known: times count from the outing's start.");
        long samples =
                report.recordings().stream().mapToLong(Report.Source::samples).sum();
        int outings =
                report.recordings().stream().mapToInt(Report.Source::outings).sum();
        lines.add(Screen.counted(report.recordings().size(), "recording") + ", " + Screen.counted(outings, "outing")
                + ", " + Screen.counted(samples, "reading") + " of the line; forces in "
                + screen.unit().symbol());
        return lines;
    }

    private String banner() {
        return report.whatIf().isEmpty()
                ? ""
                : "WHAT IF: not what was in force on the day. " + String.join(" ", report.whatIf());
    }

    private Document.Section happened() {
        EventSentences words = new EventSentences(screen);
        List<String> lines = Stream.of(
                        new OverloadLines(report, screen, words).lines().stream(),
                        report.shocks().stream().map(e -> new OverloadLines.Line(e.at(), words.shock(e))),
                        report.jolts().stream().map(e -> new OverloadLines.Line(e.at(), words.jolt(e))),
                        report.drops().stream().map(e -> new OverloadLines.Line(e.start(), words.drop(e))),
                        report.stalls().stream().map(e -> new OverloadLines.Line(e.start(), words.stall(e))),
                        report.marks().stream().map(e -> new OverloadLines.Line(e.at(), mark(e))))
                .flatMap(stream -> stream)
                .sorted(Comparator.comparing(OverloadLines.Line::at))
                .map(OverloadLines.Line::text)
                .toList();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(counts()));
        TrustSection.tooSlow(report).ifPresent(blocks::add);
        blocks.addAll(Shortened.bullets(lines));
        if (!report.drops().isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A drop says that tension was lost at once: something parted, slipped, hopped free or was let off."
                            + " A force does not tell which."));
        }
        return new Document.Section("What happened", blocks);
    }

    private String mark(Report.Mark mark) {
        return screen.preciseTime(mark.at()) + " Mark" + (mark.note().isEmpty() ? "" : ": " + mark.note());
    }

    private String counts() {
        return "Found: "
                + Screen.listed(List.of(
                        Screen.counted(report.pulls().size(), "pull"),
                        Screen.counted(report.overloads().size(), "overload"),
                        Screen.counted(report.shocks().size(), "shock"),
                        Screen.counted(report.jolts().size(), "jolt"),
                        Screen.counted(report.drops().size(), "drop"),
                        Screen.counted(report.stalls().size(), "stall")))
                + ".";
    }

    private Document.Section moments() {
        List<Block> blocks = new ArrayList<>(drawings.moments());
        if (drawings.momentsLeftOut() > 0) {
            blocks.add(new Block.Paragraph(drawings.momentsLeftOut()
                    + " more are listed above without a drawing; choose a shorter time with --from and --to."));
        }
        return new Document.Section("The seconds around", blocks);
    }
}
