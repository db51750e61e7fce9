package tautlog.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;
import tautlog.detect.Known;

/** The table of pulls; when there are very many, those with the greatest share. */
final class PullSection {
    private static final String WITH = "with 95 %";

    private final Report report;
    private final Screen screen;

    PullSection(Report report, Screen screen) {
        this.report = report;
        this.screen = screen;
    }

    Document.Section section() {
        List<Entry.Pull> shown = report.pulls().stream()
                .sorted(Comparator.comparingDouble(Entry.Pull::share).reversed())
                .limit(Shortened.MOST)
                .sorted(Comparator.comparing(Entry.Pull::start))
                .toList();
        List<Block> blocks = new ArrayList<>();
        if (shown.isEmpty()) {
            blocks.add(new Block.Paragraph("No pull was found."));
        } else {
            blocks.add(table(shown));
        }
        if (shown.size() < report.pulls().size()) {
            blocks.add(new Block.Paragraph("The " + shown.size() + " with the greatest share of "
                    + report.pulls().size() + "; all of them are in --json and --csv."));
        }
        legend(shown, blocks);
        return new Document.Section("Pulls", blocks);
    }

    private Block table(List<Entry.Pull> pulls) {
        return new Block.Table(
                "Pulls", columns(), pulls.stream().flatMap(this::rows).toList());
    }

    private List<Block.Column> columns() {
        String unit = screen.unit().symbol();
        return List.of(
                Block.Column.left("Start"),
                Block.Column.right("Length"),
                Block.Column.right("Peak " + unit),
                Block.Column.right("Mean " + unit),
                Block.Column.right("Of limit"),
                Block.Column.left("Hookup"),
                Block.Column.left(""));
    }

    /** The pull, and where its figures lie when that is known. */
    private Stream<List<String>> rows(Entry.Pull pull) {
        return isBounded(pull) ? Stream.of(row(pull), bounds(pull)) : Stream.of(row(pull));
    }

    private List<String> bounds(Entry.Pull pull) {
        return List.of(
                WITH,
                "",
                screen.bareInterval(pull.peakInterval()),
                screen.bareInterval(pull.meanInterval()),
                Screen.barePercent(pull.shareBounds()),
                pull.peakInterval()
                        .largest()
                        .map(cause -> "mostly " + cause.word())
                        .orElse(""),
                "");
    }

    private List<String> row(Entry.Pull pull) {
        return List.of(
                screen.time(pull.start()),
                Screen.length(pull.durationSeconds()),
                bound(pull.atLeast()) + screen.bareForce(pull.peakNewtons()),
                bound(pull.atLeast()) + screen.bareForce(pull.meanNewtons()),
                bound(pull.atLeast() || pull.against().isAtMost()) + Screen.percent(pull.share()),
                pull.against().hookup() + (pull.against().assumed() ? "*" : ""),
                String.join(", ", remarks(pull)));
    }

    private static boolean isBounded(Entry.Pull pull) {
        return pull.peakInterval().lowNewtons().isPresent();
    }

    private static String intervals(List<Entry.Pull> shown) {
        return shown.stream().anyMatch(PullSection::isBounded)
                ? WITH
                        + ": where the true value lies, and what of its doubt is greatest for the peak; ? is an end that is not known."
                : "How far these forces may be off is not known: see \"How far to trust this\".";
    }

    private static String bound(boolean isLower) {
        return isLower ? "≥ " : "";
    }

    private static List<String> remarks(Entry.Pull pull) {
        List<String> remarks = new ArrayList<>();
        if (pull.overloads() > 0) {
            remarks.add("OVER" + (pull.overloads() > 1 ? " x" + pull.overloads() : ""));
        }
        if (pull.mayBeOver()) {
            remarks.add("MAY BE OVER");
        }
        if (pull.shocks() > 0) {
            remarks.add("shock" + (pull.shocks() > 1 ? " x" + pull.shocks() : ""));
        }
        if (pull.held() == Known.YES) {
            remarks.add("held");
        }
        if (pull.hasGap()) {
            remarks.add("gap");
        }
        if (pull.cutByGap() || pull.cutByEnd()) {
            remarks.add("cut");
        }
        return remarks;
    }

    private void legend(List<Entry.Pull> shown, List<Block> blocks) {
        if (shown.isEmpty()) {
            return;
        }
        List<String> legend = new ArrayList<>();
        if (shown.stream().anyMatch(pull -> pull.against().assumed())) {
            legend.add("* assumed: " + Assumed.nobodySaid(report) + " that this hookup was on.");
        }
        if (shown.stream().anyMatch(pull -> pull.against().isAtMost())) {
            legend.add("≥ at a share: the limit is only known as \"at most\", the share is at least this.");
        }
        if (shown.stream().anyMatch(Entry.Pull::atLeast)) {
            legend.add(
                    "≥ at a peak: the reading was at its own end or past the cell's capacity, the pull was at least this.");
        }
        legend.add(intervals(shown));
        if (shown.stream().anyMatch(Entry.Pull::mayBeOver)) {
            legend.add(
                    "MAY BE OVER: no reading was above the limit, but with what is known of their errors the peak may have been.");
        }
        if (shown.stream().anyMatch(pull -> pull.held() == Known.YES)) {
            legend.add("held: the shaft stood still throughout, the brake held.");
        }
        if (shown.stream().anyMatch(pull -> pull.hasGap() || pull.cutByGap() || pull.cutByEnd())) {
            legend.add("gap: readings are missing in it; cut: it was cut off by a gap or the outing's end, what came"
                    + " after is not known.");
        }
        blocks.add(new Block.Paragraph(String.join(" ", legend)));
    }
}
