package tautlog.desk.limits;

import java.util.ArrayList;
import java.util.List;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.quantity.ForceUnit;
import tautlog.rig.FullPull;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/** One hookup: its limit, what each item carries and may, what happens at the winch's full pull, where figures come from. */
final class HookupSection {
    private static final String UNKNOWN = "unknown";

    private final Hookup hookup;
    private final FullPull full;
    private final ForceUnit unit;
    private final HookupWords words;

    HookupSection(Rig rig, Hookup hookup, ForceUnit unit) {
        this.words = new HookupWords(rig, hookup, unit);
        this.hookup = hookup;
        this.full = FullPull.of(rig, hookup);
        this.unit = unit;
    }

    Document.Section section() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(words.limit()));
        blocks.addAll(words.warnings());
        blocks.add(table());
        blocks.add(new Block.Bullets(words.atFullPull()));
        blocks.add(new Block.Paragraph("Where the figures come from:"));
        blocks.add(new Block.Bullets(
                hookup.items().stream().map(LoadedItem::assumptions).toList()));
        return new Document.Section(words.heading(), blocks);
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
}
