package tautlog.desk.planning;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tautlog.desk.limits.Figures;
import tautlog.desk.limits.HookupWords;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.quantity.Angle;
import tautlog.quantity.ForceUnit;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.rig.Turn;

/** One hookup of a plan: its share at the expected pull and at full pull, item by item, and as the angle at the block closes. */
final class PlannedSection {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final String UNKNOWN = "?";

    private final PlannedPull pull;
    private final ForceUnit unit;
    private final HookupWords words;
    private final String id;

    /** @param id of its drawings, different for every hookup of the page */
    PlannedSection(Rig rig, PlannedPull pull, ForceUnit unit, String id) {
        this.pull = pull;
        this.unit = unit;
        this.words = new HookupWords(rig, pull.hookup(), unit);
        this.id = id;
    }

    Document.Section section() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(words.limit() + " " + shares() + angle()));
        warning().ifPresent(blocks::add);
        if (pull.mayStall()) {
            blocks.add(
                    new Block.Notice(
                            Block.Tone.CAUTION,
                            "winch",
                            "The expected pull may be more than the winch can pull: it may stall with the line at its full pull."));
        }
        blocks.addAll(words.warnings());
        blocks.add(items());
        blocks.add(new Block.Paragraph("If it hangs up:"));
        blocks.add(new Block.Bullets(words.atFullPull()));
        if (pull.hookup().turnsTheLine()) {
            angles(blocks);
        }
        blocks.add(new Block.Paragraph("Where the limits come from:"));
        blocks.add(new Block.Bullets(
                pull.hookup().items().stream().map(LoadedItem::assumptions).toList()));
        return new Document.Section(words.heading(), blocks);
    }

    private String shares() {
        String least = atLeast(pull.hookup().limit().isAtMost());
        String expected = pull.highNewtons()
                .map(high -> "Expected pull: " + least
                        + span(pull.lowNewtons().map(pull::ofLimit), Optional.of(pull.ofLimit(high))) + " of limit")
                .orElse("Expected pull: none can be given");
        return expected + "; if it hangs up: " + least
                + Figures.percent(pull.ofLimit(pull.full().tensionNewtons())) + " of limit.";
    }

    private String angle() {
        return pull.hookup().items().stream()
                .flatMap(item -> item.turn().stream())
                .findFirst()
                .map(turn -> " " + between(turn))
                .orElse("");
    }

    private static String between(Turn turn) {
        return turn.betweenLines()
                .map(angle -> "Angle between the lines at the block: " + degrees(angle) + ".")
                .orElse("No angle between the lines is written: the greatest load, at 0°, is taken.");
    }

    private static String degrees(Angle angle) {
        return angle.degrees().stripTrailingZeros().toPlainString() + "°";
    }

    private Optional<Block> warning() {
        if (pull.highNewtons().isEmpty()
                || pull.ofLimit(pull.highNewtons().get()).compareTo(BigDecimal.ONE) <= 0) {
            return Optional.empty();
        }
        boolean surely = pull.lowNewtons()
                .filter(low -> pull.ofLimit(low).compareTo(BigDecimal.ONE) > 0)
                .isPresent();
        return Optional.of(new Block.Notice(
                Block.Tone.ACTION,
                "past the limit",
                "The expected pull alone " + (surely ? "is" : "may be") + " more than "
                        + HookupWords.names(pull.hookup().items().stream()
                                .filter(item ->
                                        pull.highShare(item).orElseThrow().compareTo(BigDecimal.ONE) > 0)
                                .toList())
                        + " may carry. Take stronger gear"
                        + (pull.hookup().turnsTheLine() ? ", a wider angle at the block," : "")
                        + " or a smaller log."));
    }

    private Block.Table items() {
        return new Block.Table(
                "Items of " + pull.hookup().id() + ": load, and % of what it may carry",
                List.of(
                        Block.Column.left("item"),
                        Block.Column.left("as"),
                        Block.Column.right("× tension"),
                        Block.Column.right("may carry"),
                        Block.Column.right("expected pull"),
                        Block.Column.right("if it hangs up")),
                pull.hookup().items().stream().map(this::row).toList());
    }

    private List<String> row(LoadedItem item) {
        String bound = item.allowedIsAtMost() ? "≤ " : "";
        String least = item.allowedIsAtMost() ? "≥ " : "";
        return List.of(
                item.gear(),
                item.as(),
                Figures.multiple(item.multiple()),
                bound + unit.format(item.allowedNewtons()),
                pull.highNewtons().isEmpty() ? "it runs" : least + span(pull.lowShare(item), pull.highShare(item)),
                least + Figures.percent(pull.fullShare(item)));
    }

    private void angles(List<Block> blocks) {
        BlockSweep sweep = BlockSweep.of(pull);
        blocks.add(new Block.Heading(
                "As the angle at the block closes: " + pull.hookup().id()));
        blocks.add(new Block.Bullets(List.of(
                "The limit is set by " + stretches(sweep.governing()) + ".",
                "Of those whose strength is known, breaks first as the tension rises: " + stretches(sweep.breaksFirst())
                        + ".")));
        blocks.add(new Block.Table(
                "Load on block and strap of " + pull.hookup().id() + " by the angle between the lines",
                List.of(
                        Block.Column.right("angle"),
                        Block.Column.right("× tension"),
                        Block.Column.right("expected, " + unit.symbol()),
                        Block.Column.right("hung up"),
                        Block.Column.right("limit"),
                        Block.Column.left("set by"),
                        Block.Column.left("breaks first")),
                Stream.of(150, 120, 90, 60, 45, 30, 0)
                        .map(sweep::at)
                        .map(this::row)
                        .toList()));
        blocks.addAll(new AngleFigures(pull, sweep, unit, id).all());
    }

    private List<String> row(BlockSweep.Step step) {
        BigDecimal multiple = step.blockMultiple();
        return List.of(
                step.degrees() + "°",
                Figures.multiple(multiple),
                pull.highNewtons()
                        .map(high -> number(pull.lowNewtons().map(multiple::multiply), RoundingMode.FLOOR) + "–"
                                + number(Optional.of(high.multiply(multiple)), RoundingMode.CEILING))
                        .orElse("it runs"),
                unit.number(pull.full().tensionNewtons().multiply(multiple)),
                (step.pull().hookup().limit().isAtMost() ? "≤ " : "")
                        + unit.number(step.pull().hookup().limit().newtons()),
                step.governing(),
                step.breaksFirst());
    }

    private String number(Optional<BigDecimal> newtons, RoundingMode rounding) {
        return newtons.map(force -> unit.number(force, rounding)).orElse(UNKNOWN);
    }

    private static String stretches(List<BlockSweep.Stretch> stretches) {
        return stretches.stream()
                .map(stretch -> stretch.word() + " from " + stretch.fromDegrees() + "° to " + stretch.toDegrees() + "°")
                .collect(Collectors.joining(", "));
    }

    /** {@code 34–71 %}, ends rounded outwards; {@code ?} for a low end of which nothing is known. */
    private static String span(Optional<BigDecimal> low, Optional<BigDecimal> high) {
        return low.map(share -> share.multiply(HUNDRED)
                                .setScale(0, RoundingMode.FLOOR)
                                .toPlainString())
                        .orElse(UNKNOWN)
                + "–" + Figures.percent(high.orElseThrow());
    }

    private static String atLeast(boolean isAtLeast) {
        return isAtLeast ? "at least " : "";
    }
}
