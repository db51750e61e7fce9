package tautlog.desk.incident;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;
import tautlog.desk.report.ItemLoad;
import tautlog.rig.Band;

/** What each item in the line carried, and what is written about it. */
final class LoadSection {
    private final OutingFacts outing;
    private final Screen screen;

    LoadSection(OutingFacts outing, Screen screen) {
        this.outing = outing;
        this.screen = screen;
    }

    Document.Section section() {
        return new Document.Section(
                "Every item's load",
                outing.subject()
                        .map(this::loads)
                        .orElse(List.of(
                                new Block.Paragraph("Nothing was pulled in the time looked at: no load is given."))));
    }

    private List<Block> loads(Subject subject) {
        String unit = screen.unit().symbol();
        List<Block.Column> columns = List.of(
                Block.Column.left("Item"),
                Block.Column.right("Load " + unit),
                Block.Column.right("with 95 %"),
                Block.Column.right("May carry"),
                Block.Column.right("Of that"),
                Block.Column.right("with 95 %"),
                Block.Column.right("Proof"),
                Block.Column.right("Breaking"),
                Block.Column.left("Band"));
        Block table = new Block.Table(
                "Loads at the greatest pull, hookup " + subject.against().hookup() + ", in " + unit,
                columns,
                subject.items().stream().map(item -> row(item, subject)).toList());
        return List.of(
                table,
                new Block.Paragraph(
                        "May carry: the working load limit as rigged. Bands: past-wll, more than that; past-proof, more than the"
                                + " proof load; past-breaking, more than the breaking load. ≥ is a lower bound, ≤ an upper one; – is not"
                                + " published; ? is an end that is not known."));
    }

    private List<String> row(ItemLoad item, Subject subject) {
        boolean unsure = item.isBandUnsure();
        return List.of(
                item.gear(),
                (subject.atLeast() ? "≥ " : "") + screen.bareForce(item.loadNewtons()),
                unsure ? "not known" : screen.bareInterval(item.load()),
                (item.allowedIsAtMost() ? "≤ " : "") + screen.bareForce(item.allowedNewtons()),
                (subject.atLeast() || item.allowedIsAtMost() ? "≥ " : "") + Screen.percent(item.share()),
                unsure ? "not known" : Screen.barePercent(item.shareBounds()),
                bare(item.proofNewtons()),
                bare(item.breakingNewtons()),
                band(item));
    }

    private String bare(OptionalDouble newtons) {
        return newtons.isPresent() ? screen.bareForce(newtons.getAsDouble()) : "–";
    }

    private static String band(ItemLoad item) {
        List<String> words = new ArrayList<>();
        words.add(item.band().map(Band::word).orElse("not past it"));
        item.worseMayBe().ifPresent(worse -> words.add("may be " + worse.word()));
        if (item.isBandUnsure()) {
            words.add("how sure is not known");
        }
        return String.join(", ", words);
    }

    /** Serial numbers, sources, dates. */
    Document.Section gear() {
        List<Block> blocks = new ArrayList<>();
        if (outing.gear().isEmpty()) {
            blocks.add(new Block.Paragraph("The rig describes no gear for this hookup."));
        } else {
            blocks.add(new Block.Table(
                    "Gear that was in the line",
                    List.of(
                            Block.Column.left("Gear"),
                            Block.Column.left("What"),
                            Block.Column.left("Serial"),
                            Block.Column.left("Working load limit from"),
                            Block.Column.left("Fitted"),
                            Block.Column.left("Last inspection")),
                    outing.gear().stream().map(this::gearRow).toList()));
        }
        outing.gear()
                .forEach(gear -> gear.outOfService()
                        .ifPresent(why ->
                                blocks.add(new Block.Notice(Block.Tone.ACTION, gear.id() + " out of service", why))));
        blocks.add(new Block.Paragraph(
                outing.isLedgerRead()
                        ? (outing.at().utc().isPresent()
                                        ? "Last inspections are those of the ledger up to that moment where it tells one, else of the rig."
                                        : "Last inspections are the newest of the ledger where it tells one, else of the rig. The outing has no"
                                                + " clock: whether they were before that moment is not known.")
                                + (outing.ledgerUnusable() == 0
                                        ? ""
                                        : " " + Screen.counted(outing.ledgerUnusable(), "line")
                                                + " of the ledger could not be used.")
                        : "No ledger was read: last inspections are those that the rig states."));
        return new Document.Section("The gear", blocks);
    }

    private List<String> gearRow(GearFacts gear) {
        return List.of(
                gear.id(),
                gear.description() + (gear.count() > 1 ? " (one of " + gear.count() + ", which is not known)" : ""),
                gear.serial().orElse("not written"),
                gear.workingLoadLimitFrom().orElse("not written"),
                day(gear.fitted()),
                inspections(gear));
    }

    private static String inspections(GearFacts gear) {
        return gear.ledger().isEmpty()
                ? day(gear.lastInspection())
                : gear.ledger().stream()
                        .map(line -> line.day() + " " + line.what())
                        .collect(Collectors.joining("; "));
    }

    private static String day(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("not written");
    }
}
