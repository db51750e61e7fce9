package tautlog.desk.limits;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.quantity.ForceUnit;
import tautlog.rig.FullPull;
import tautlog.rig.Gear;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/** One hookup: its limit, what each item carries and may, what happens at the winch's full pull, where figures come from. */
final class HookupSection {
    private static final String UNKNOWN = "unknown";

    private final Rig rig;
    private final Hookup hookup;
    private final FullPull full;
    private final ForceUnit unit;

    HookupSection(Rig rig, Hookup hookup, ForceUnit unit) {
        this.rig = rig;
        this.hookup = hookup;
        this.full = FullPull.of(rig, hookup);
        this.unit = unit;
    }

    Document.Section section() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(limit()));
        warnings(blocks);
        blocks.add(table());
        blocks.add(new Block.Bullets(atFullPull()));
        blocks.add(new Block.Paragraph("Where the figures come from:"));
        blocks.add(new Block.Bullets(
                hookup.items().stream().map(LoadedItem::assumptions).toList()));
        return new Document.Section(heading(), blocks);
    }

    private String heading() {
        List<String> marks = new ArrayList<>();
        hookup.selector().ifPresent(position -> marks.add("selector " + position));
        if (hookup.isDefault()) {
            marks.add("default");
        }
        return hookup.id() + (marks.isEmpty() ? "" : " (" + String.join(", ", marks) + ")");
    }

    private String limit() {
        String atMost = hookup.limit().isAtMost() ? "at most " : "";
        return "Limit of " + hookup.id() + ": " + atMost
                + unit.format(hookup.limit().newtons()) + " in the line, set by "
                + hookup.limit().governing() + ".";
    }

    private void warnings(List<Block> blocks) {
        if (hookup.limit().isAtMost()) {
            blocks.add(caution(
                    "upper bound",
                    "The true limit is lower than this figure by an unknown amount; see below at "
                            + names(hookup.items().stream()
                                    .filter(LoadedItem::allowedIsAtMost)
                                    .toList()) + "."));
        }
        hookup.items()
                .forEach(item -> outOfService(item)
                        .ifPresent(reason -> blocks.add(new Block.Notice(Block.Tone.ACTION, item.gear(), reason))));
        full.chokersThatOutlastTheRope()
                .forEach(choker -> blocks.add(caution(
                        choker.gear(),
                        "This choker would outlast the rope. A rope that parts flies further than a choker: choose a choker"
                                + " that breaks first, and stay clear.")));
        full.chokersThatMayOutlastTheRope()
                .forEach(choker -> blocks.add(caution(
                        choker.gear(),
                        "Whether this choker or the rope parts first is unknown. A rope that parts flies further.")));
    }

    private Optional<String> outOfService(LoadedItem item) {
        return rig.gear().stream()
                .filter(gear -> gear.id().equals(item.gear()))
                .findFirst()
                .flatMap(Gear::outOfService);
    }

    private static Block caution(String label, String text) {
        return new Block.Notice(Block.Tone.CAUTION, label, text);
    }

    private Block.Table table() {
        return new Block.Table(
                "Items of " + hookup.id(),
                List.of(
                        Block.Column.left("item"),
                        Block.Column.left("as"),
                        Block.Column.right("carries"),
                        Block.Column.right("may carry"),
                        Block.Column.right("breaks at"),
                        Block.Column.right("at full pull")),
                hookup.items().stream().map(this::row).toList());
    }

    private List<String> row(LoadedItem item) {
        String bound = item.allowedIsAtMost() ? "≤ " : "";
        String least = item.allowedIsAtMost() ? "≥ " : "";
        return List.of(
                item.gear(),
                item.as(),
                Figures.multiple(item.multiple()) + " × tension",
                bound + unit.format(item.allowedNewtons()),
                item.breakingNewtons()
                        .map(newtons -> bound + unit.format(newtons))
                        .orElse(UNKNOWN),
                least + Figures.percent(item.share(full.tensionNewtons())));
    }

    private List<String> atFullPull() {
        List<String> sentences = new ArrayList<>();
        sentences.add("At the winch's full pull (" + unit.format(full.tensionNewtons()) + ") "
                + (full.overloaded().isEmpty()
                        ? "no item is past its known limit."
                        : names(full.overloaded()) + " would be past what is allowed."));
        sentences.add(breaksFirst());
        if (!full.ofUnknownStrength().isEmpty()) {
            sentences.add(
                    "Breaking load unknown: " + names(full.ofUnknownStrength()) + ". Any of these may break before.");
        }
        if (!full.overloaded().isEmpty()) {
            sentences.add("A winch set to pull no more than the limit is as good a cure as stronger gear.");
        }
        return sentences;
    }

    private String breaksFirst() {
        return full.breaksFirst()
                .map(item -> {
                    BigDecimal tension = item.tensionAtBreaking().orElseThrow();
                    String within = tension.compareTo(full.tensionNewtons()) <= 0 ? ", within the winch's pull" : "";
                    return "As the tension rises, of those known " + item.gear() + " breaks first, at a tension of "
                            + (item.allowedIsAtMost() ? "at most " : "") + unit.format(tension) + within
                            + ". Worn or damaged gear breaks earlier.";
                })
                .orElse("Which item breaks first is unknown: no breaking load is published for any.");
    }

    private static String names(List<LoadedItem> items) {
        return items.stream().map(LoadedItem::gear).distinct().collect(Collectors.joining(", "));
    }
}
