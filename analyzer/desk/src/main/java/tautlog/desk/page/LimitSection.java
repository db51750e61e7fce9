package tautlog.desk.page;

import java.util.ArrayList;
import java.util.List;
import tautlog.desk.report.Report;

/** The limits that tensions were compared with. */
final class LimitSection {
    private final Report report;
    private final Screen screen;

    LimitSection(Report report, Screen screen) {
        this.report = report;
        this.screen = screen;
    }

    Document.Section section() {
        Block.Table table = new Block.Table(
                "Hookups",
                List.of(
                        Block.Column.left("Hookup"),
                        Block.Column.right("Limit"),
                        Block.Column.left("Set by"),
                        Block.Column.left("Which was on")),
                report.hookups().stream().map(this::row).toList());
        List<Block> blocks = new ArrayList<>();
        blocks.add(table);
        blocks.add(new Block.Paragraph("A limit is the greatest tension at which no item of the hookup is beyond its"
                + " working load limit as rigged. Every item's figures: tautlog limits --rig RIG."));
        report.hookups().forEach(hookup -> assumptions(hookup, blocks));
        return new Document.Section("Limits in force", blocks);
    }

    private static void assumptions(Report.HookupInForce hookup, List<Block> blocks) {
        blocks.add(new Block.Heading("What the limit of " + hookup.id() + " rests on"));
        blocks.add(new Block.Bullets(hookup.assumptions()));
    }

    private List<String> row(Report.HookupInForce hookup) {
        return List.of(
                hookup.id(),
                (hookup.limitIsAtMost() ? "at most " : "") + screen.force(hookup.limitNewtons()),
                hookup.governing(),
                said(hookup));
    }

    private String said(Report.HookupInForce hookup) {
        if (hookup.assumed()) {
            return "assumed, nobody said so";
        }
        return report.whatIf().stream().anyMatch(reason -> reason.contains("--hookup"))
                ? "asked for with --hookup"
                : "said by a person or the switch";
    }
}
