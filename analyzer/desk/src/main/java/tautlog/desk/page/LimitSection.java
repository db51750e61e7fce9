package tautlog.desk.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
        blocks.add(new Block.Heading("What these limits rest on"));
        blocks.add(new Block.Bullets(assumptions()));
        return new Document.Section("Limits in force", blocks);
    }

    /** Each once; with the hookups that it holds for, where it does not hold for all. */
    private List<String> assumptions() {
        Map<String, Set<String>> hookups = new LinkedHashMap<>();
        report.hookups()
                .forEach(hookup -> hookup.assumptions()
                        .forEach(line -> hookups.computeIfAbsent(line, of -> new LinkedHashSet<>())
                                .add(hookup.id())));
        long all = report.hookups().stream()
                .map(Report.HookupInForce::id)
                .distinct()
                .count();
        List<String> lines = new ArrayList<>();
        hookups.forEach((line, ids) ->
                lines.add(ids.size() == all ? line : line + " (" + Screen.listed(List.copyOf(ids)) + ")"));
        return lines;
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
            return Assumed.of(report, hookup.id()).inTable(screen);
        }
        return report.whatIf().stream().anyMatch(reason -> reason.contains("--hookup"))
                ? "asked for with --hookup"
                : "said by a person or the switch";
    }
}
