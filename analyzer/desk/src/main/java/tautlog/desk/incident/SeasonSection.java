package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;

/** What else in the recordings was like it. */
final class SeasonSection {
    /** Chosen: about half a printed page. */
    private static final int MOST = 25;

    private final OutingFacts outing;
    private final Screen screen;

    SeasonSection(OutingFacts outing, Screen screen) {
        this.outing = outing;
        this.screen = screen;
    }

    Document.Section section() {
        return new Document.Section(
                "Comparable events in these recordings",
                outing.subject()
                        .map(this::blocks)
                        .orElse(List.of(new Block.Paragraph("Nothing was pulled: there is nothing to compare."))));
    }

    private List<Block> blocks(Subject subject) {
        List<Block> blocks = new ArrayList<>();
        List<SeasonEvent> all = outing.alike();
        long asHigh =
                all.stream().filter(event -> event.share() >= subject.share()).count();
        blocks.add(new Block.Paragraph(
                "Overloads, shocks, and pulls without an overload, with the same hookup or the same gear"
                        + " setting the limit, that reached nine tenths of this share of the limit or more: "
                        + all.size() + ", of which " + asHigh
                        + " reached as much or more. Outside the time looked at; only what is in"
                        + " the recordings given."));
        if (!all.isEmpty()) {
            blocks.add(table(all));
        }
        if (all.size() > MOST) {
            blocks.add(new Block.Paragraph("The " + MOST + " with the greatest share; all of them are in --json."));
        }
        return blocks;
    }

    private Block table(List<SeasonEvent> all) {
        List<SeasonEvent> shown = all.stream()
                .sorted(Comparator.comparingDouble(SeasonEvent::share).reversed())
                .limit(MOST)
                .sorted(Comparator.comparing(SeasonEvent::at))
                .toList();
        return new Block.Table(
                "Comparable events",
                List.of(
                        Block.Column.left("When"),
                        Block.Column.left("What"),
                        Block.Column.right("Peak " + screen.unit().symbol()),
                        Block.Column.right("with 95 %"),
                        Block.Column.right("Of limit"),
                        Block.Column.left("Hookup")),
                shown.stream().map(this::row).toList());
    }

    private List<String> row(SeasonEvent event) {
        String day = event.at().utc().map(utc -> screen.date(utc) + " ").orElse("");
        return List.of(
                (screen.severalDays() ? "" : day) + screen.preciseTime(event.at()),
                event.kind(),
                (event.atLeast() ? "≥ " : "") + screen.bareForce(event.peakNewtons()),
                event.peakInterval().lowNewtons().isEmpty() ? "not known" : screen.bareInterval(event.peakInterval()),
                (event.atLeast() || event.against().isAtMost() ? "≥ " : "") + Screen.percent(event.share()),
                event.against().hookup() + (event.against().assumed() ? "*" : ""));
    }
}
