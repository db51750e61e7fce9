package tautlog.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;

/** What happened, pull by pull: like findings in one sentence, the everyday counted; and the list of everything. */
final class HappenedSection {
    static final String EVERYTHING = "Everything that was found";

    private final Report report;
    private final Screen screen;
    private final EventSentences words;
    private final Told told;

    HappenedSection(Report report, Screen screen) {
        this.report = report;
        this.screen = screen;
        words = new EventSentences(screen);
        told = new Told(report);
    }

    /** A sentence and when what it tells began. */
    private record Line(Moment at, String text) {}

    /** @param extent whether {@link #everything} stands on the same page */
    Document.Section section(ReportPage.Extent extent) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(counts()));
        TrustSection.tooSlow(report).ifPresent(blocks::add);
        if (!Told.all(report).isEmpty()) {
            blocks.add(new Block.Paragraph(told.rule() + leftOut(extent)));
        }
        if (report.pulls().stream()
                .anyMatch(pull -> pull.peakInterval().lowNewtons().isPresent())) {
            blocks.add(new Block.Paragraph(
                    "In brackets: where the true value lies, with 95 %; \"or more\": no upper end is"
                            + " known. How far to trust this says what that holds."));
        }
        pullByPull(blocks);
        if (!report.drops().isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A drop says that tension was lost at once: something parted, slipped, hopped free or was let off."
                            + " A force does not tell which."));
        }
        return new Document.Section("What happened", blocks);
    }

    private void pullByPull(List<Block> blocks) {
        String above = "";
        for (Map.Entry<Span, List<Line>> group : groups().entrySet()) {
            String heading = group.getKey().heading(screen);
            if (!heading.equals(above)) {
                blocks.add(new Block.Heading(heading));
            }
            blocks.add(new Block.Bullets(texts(group.getValue())));
            above = heading;
        }
    }

    private static List<String> texts(List<Line> lines) {
        return lines.stream()
                .sorted(Comparator.comparing(Line::at))
                .map(Line::text)
                .toList();
    }

    private Map<Span, List<Line>> groups() {
        MergedSentences merged = new MergedSentences(screen, words);
        Map<Span, Map<MergedSentences.Likeness, List<Entry>>> alike = new TreeMap<>();
        Told.all(report).stream()
                .filter(told::tells)
                .forEach(entry -> alike.computeIfAbsent(span(MergedSentences.at(entry)), of -> new LinkedHashMap<>())
                        .computeIfAbsent(MergedSentences.Likeness.of(entry), of -> new ArrayList<>())
                        .add(entry));
        Map<Span, List<Line>> groups = new TreeMap<>();
        alike.forEach((span, kinds) -> kinds.values()
                .forEach(entries -> groups.computeIfAbsent(span, of -> new ArrayList<>())
                        .add(new Line(MergedSentences.at(entries.get(0)), merged.of(entries)))));
        report.marks()
                .forEach(mark -> groups.computeIfAbsent(span(mark.at()), of -> new ArrayList<>())
                        .add(new Line(mark.at(), mark(mark))));
        return groups;
    }

    private Span span(Moment at) {
        return Span.of(at, report.pulls());
    }

    private String leftOut(ReportPage.Extent extent) {
        long jolts = report.jolts().stream().filter(jolt -> !told.tells(jolt)).count();
        long drops = report.drops().stream().filter(drop -> !told.tells(drop)).count();
        if (jolts + drops == 0) {
            return " Nothing was left out.";
        }
        List<String> kinds = Stream.of(
                        jolts == 0 ? "" : Screen.counted(jolts, "jolt"),
                        drops == 0 ? "" : Screen.counted(drops, "drop"))
                .filter(kind -> !kind.isEmpty())
                .toList();
        return " Left out: " + Screen.listed(kinds) + "; "
                + (extent == ReportPage.Extent.EVERYTHING
                        ? "see \"" + EVERYTHING + "\"."
                        : "--json, --csv and --html have them.");
    }

    /** Each finding in a sentence of its own. */
    Document.Section everything() {
        MergedSentences each = new MergedSentences(screen, words);
        Stream<Line> findings =
                Told.all(report).stream().map(entry -> new Line(MergedSentences.at(entry), each.of(List.of(entry))));
        Stream<Line> marks = report.marks().stream().map(mark -> new Line(mark.at(), mark(mark)));
        List<String> texts = texts(Stream.concat(findings, marks).toList());
        return new Document.Section(
                EVERYTHING,
                List.of(texts.isEmpty() ? new Block.Paragraph("Nothing was found.") : new Block.Bullets(texts)));
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
}
