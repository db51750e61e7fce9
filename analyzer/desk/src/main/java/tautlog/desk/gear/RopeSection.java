package tautlog.desk.gear;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.Screen;
import tautlog.detect.Known;
import tautlog.rig.Gear;
import tautlog.rig.RopeMake;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.InspectionFigure;
import tautlog.usage.RopeCondition;
import tautlog.usage.RopeCriterion;
import tautlog.usage.RopeDiscard;
import tautlog.usage.RopeUse;

/** Wire ropes: what the last inspection found, held against every criterion; beside it the cycles, as a trend only. */
final class RopeSection {
    private final GearLives.OfWinch winch;
    private final Screen screen;

    RopeSection(GearLives.OfWinch winch, Screen screen) {
        this.winch = winch;
        this.screen = screen;
    }

    /** Empty without a rope. */
    Optional<Document.Section> section() {
        List<Block> blocks = new ArrayList<>();
        for (GearLife life : winch.lives()) {
            life.gear().flatMap(Gear::rope).ifPresent(make -> rope(life, make, blocks));
        }
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(new Document.Section("Rope on " + winch.rig().winch(), blocks));
    }

    private void rope(GearLife life, RopeMake make, List<Block> blocks) {
        blocks.add(new Block.Heading(life.id()));
        Optional<Entry> latest = life.inspections().isEmpty()
                ? Optional.empty()
                : Optional.of(life.inspections().get(life.inspections().size() - 1));
        if (latest.isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "No inspection stands in the ledger: whether a discard criterion is reached is not known. Broken wires and"
                            + " diameter decide, not the figures below."));
        } else {
            inspected(latest.get(), make, blocks);
        }
        life.ropes().ifPresent(use -> cycles(life, use, blocks));
    }

    private void inspected(Entry entry, RopeMake make, List<Block> blocks) {
        List<RopeCriterion> criteria = RopeDiscard.criteria(make, condition((Act.Inspected) entry.act()));
        List<RopeCriterion> reached = criteria.stream()
                .filter(criterion -> criterion.reached() == Known.YES)
                .toList();
        String when = "Inspected " + screen.date(entry.at())
                + entry.by().map(by -> " by " + by).orElse("") + ". ";
        if (reached.isEmpty()) {
            blocks.add(new Block.Paragraph(when + "No criterion entered reaches discard; a competent person decides."));
        } else {
            blocks.add(new Block.Notice(
                    Block.Tone.ACTION,
                    "Discard",
                    when + "Discard the rope: " + reached.get(0).rule() + " ("
                            + reached.get(0).source() + "; found: "
                            + reached.get(0).found() + ")."));
        }
        blocks.add(new Block.Table(
                "Discard criteria",
                List.of(
                        Block.Column.left("Discard at"),
                        Block.Column.left("Source"),
                        Block.Column.right("Found"),
                        Block.Column.left("Reached")),
                criteria.stream().map(RopeSection::row).toList(),
                Block.Narrow.STACKS));
    }

    private static List<String> row(RopeCriterion criterion) {
        return List.of(
                criterion.rule(),
                criterion.source() + " (" + criterion.status().words() + ")",
                criterion.found().isEmpty() ? "not entered" : criterion.found(),
                switch (criterion.reached()) {
                    case YES -> "REACHED";
                    case NO -> "not reached";
                    case UNKNOWN -> "not known";
                });
    }

    /** What an entry of the ledger says of a rope. */
    static RopeCondition condition(Act.Inspected inspected) {
        Map<String, BigDecimal> figures = inspected.figures();
        return new RopeCondition(
                count(figures, InspectionFigure.BROKEN_WIRES_IN_LAY),
                count(figures, InspectionFigure.BROKEN_WIRES_IN_STRAND),
                count(figures, InspectionFigure.BROKEN_WIRES_IN_6D),
                count(figures, InspectionFigure.BROKEN_WIRES_IN_30D),
                count(figures, InspectionFigure.BROKEN_WIRES_AT_END),
                Optional.ofNullable(figures.get(InspectionFigure.DIAMETER_MM.key())),
                inspected.damage());
    }

    private static OptionalInt count(Map<String, BigDecimal> figures, InspectionFigure figure) {
        BigDecimal value = figures.get(figure.key());
        return value == null ? OptionalInt.empty() : OptionalInt.of(value.intValue());
    }

    private void cycles(GearLife life, RopeUse use, List<Block> blocks) {
        String atLeast = use.isAtLeast() ? "at least " : "";
        blocks.add(
                new Block.Paragraph("Since " + life.fitted().map(screen::date).orElse("the first recording") + ": "
                        + Screen.counted(life.since().pulls(), "pull") + ", " + atLeast
                        + String.format(Locale.ROOT, "%.1f", use.cycles())
                        + " load cycles. Their sum (Miner, slope 4.09 of six-strand rope, API RP 2SK, from memory) is "
                        + atLeast
                        + String.format(Locale.ROOT, "%.3f", use.minerCycles())
                        + " cycles of the working load limit: a trend to compare with an earlier one, no life."));
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < use.halfCycles().size(); i++) {
            if (use.halfCycles().get(i) > 0) {
                rows.add(List.of(
                        range(i),
                        String.format(Locale.ROOT, "%.1f", use.halfCycles().get(i) / 2.0)));
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new Block.Table(
                    "Load cycles by range",
                    List.of(Block.Column.left("Range, % of limit"), Block.Column.right("Cycles")),
                    rows));
        }
    }

    private static String range(int place) {
        return place == RopeUse.EDGES.size() ? "above " + percent(place - 1) : "to " + percent(place);
    }

    private static String percent(int place) {
        return String.valueOf(Math.round(RopeUse.EDGES.get(place) * 100));
    }
}
