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
    private final Extent extent;
    private final Document.Section gear;

    private ReportPage(Report report, Screen screen, Drawings drawings, Extent extent, Document.Section gear) {
        this.report = report;
        this.screen = screen;
        this.drawings = drawings;
        this.extent = extent;
        this.gear = gear;
    }

    /** How much a page holds. */
    public enum Extent {
        /** What is read in a minute; the rest is counted. */
        DIGEST,
        /** The same, and at the end a list of every finding. */
        EVERYTHING
    }

    /** @param gear what is out of service: {@link OverloadedGear} where no ledger was read */
    public static Document of(Report report, Screen screen, Drawings drawings, Extent extent, Document.Section gear) {
        return new ReportPage(report, screen, drawings, extent, gear).document();
    }

    private Document document() {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(new ActionSection(report, screen).section());
        sections.add(gear);
        if (!drawings.days().isEmpty()) {
            sections.add(new Document.Section("The day at a glance", List.copyOf(drawings.days())));
        }
        HappenedSection happened = new HappenedSection(report, screen);
        sections.add(happened.section(extent));
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
        if (extent == Extent.EVERYTHING) {
            sections.add(happened.everything());
        }
        return new Document(title(), subtitle(), banner(report), sections);
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

    /** What stands on top of every page: what could not be read, and WHAT IF; empty when there is nothing to say. */
    public static String banner(Report report) {
        List<String> banner = new ArrayList<>();
        if (!report.leftOut().isNothing()) {
            banner.add(missing(report));
        }
        if (!report.whatIf().isEmpty()) {
            banner.add("WHAT IF: not what was in force on the day. " + String.join(" ", report.whatIf()));
        }
        return String.join(" ", banner);
    }

    private static String missing(Report report) {
        List<String> kinds = Stream.of(
                        counted(report.leftOut().recordings().size(), "recording"),
                        counted(report.leftOut().outings().size(), "outing"),
                        counted(report.leftOut().blocks().size(), "damaged block"))
                .flatMap(Optional::stream)
                .toList();
        return "NOT EVERYTHING IS HERE: " + Screen.listed(kinds)
                + " could not be read. What happened then is not known, and is in no figure below.";
    }

    private static Optional<String> counted(int n, String one) {
        return n == 0 ? Optional.empty() : Optional.of(Screen.counted(n, one));
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
