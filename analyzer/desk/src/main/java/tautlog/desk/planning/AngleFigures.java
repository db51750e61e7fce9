package tautlog.desk.planning;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import tautlog.desk.page.Block;
import tautlog.quantity.ForceUnit;
import tautlog.rig.LoadedItem;

/** The drawings of one hookup that turns the line: loads and shares as the angle at the block closes. */
final class AngleFigures {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private final PlannedPull pull;
    private final BlockSweep sweep;
    private final ForceUnit unit;
    private final String id;

    /** @param id a prefix that no other hookup of the page has */
    AngleFigures(PlannedPull pull, BlockSweep sweep, ForceUnit unit, String id) {
        this.pull = pull;
        this.sweep = sweep;
        this.unit = unit;
        this.id = id;
    }

    /** Load of block and strap; shares while the log moves, unless it runs by itself; shares when it hangs up. */
    List<Block.Figure> all() {
        List<Block.Figure> figures = new ArrayList<>();
        figures.add(loads());
        if (pull.highNewtons().isPresent()) {
            figures.add(
                    shares("expected", "Share of each item's limit at the expected pull", this::expected, List.of()));
        }
        figures.add(shares(
                "full",
                "Share of each item's limit if it hangs up: the winch's full pull",
                this::full,
                List.of(
                        new AngleChart.Strip("sets the limit", sweep.governing()),
                        new AngleChart.Strip("breaks first, of those known", sweep.breaksFirst()))));
        return figures;
    }

    private Block.Figure loads() {
        List<AngleChart.Curve> curves = new ArrayList<>();
        pull.highNewtons()
                .ifPresent(high -> curves.add(new AngleChart.Curve(
                        "expected pull", blockLoads(pull.lowNewtons().orElse(BigDecimal.ZERO)), blockLoads(high))));
        List<Double> full = blockLoads(pull.full().tensionNewtons());
        curves.add(new AngleChart.Curve("if it hangs up", full, full));
        List<AngleChart.Level> levels = pull.hookup().items().stream()
                .filter(item -> item.turn().isPresent())
                .map(item -> new AngleChart.Level("allowed, " + item.gear(), inUnit(item.allowedNewtons())))
                .toList();
        return figure(
                "load",
                "Load on block and strap as the angle closes",
                "load, " + unit.symbol(),
                curves,
                levels,
                List.of());
    }

    private List<Double> blockLoads(BigDecimal tensionNewtons) {
        return sweep.steps().stream()
                .map(step -> inUnit(step.blockMultiple().multiply(tensionNewtons)))
                .toList();
    }

    private double inUnit(BigDecimal newtons) {
        return newtons.doubleValue() / unit.newtons().doubleValue();
    }

    private Block.Figure shares(
            String name, String title, Function<Integer, AngleChart.Curve> curve, List<AngleChart.Strip> strips) {
        List<AngleChart.Curve> curves = IntStream.range(0, pull.hookup().items().size())
                .mapToObj(curve::apply)
                .toList();
        return figure(name, title, "% of limit", curves, List.of(new AngleChart.Level("limit", 100)), strips);
    }

    private AngleChart.Curve expected(int item) {
        return new AngleChart.Curve(
                name(item),
                percents(item, step -> loaded -> step.pull().lowShare(loaded).orElse(BigDecimal.ZERO)),
                percents(item, step -> loaded -> step.pull().highShare(loaded).orElseThrow()));
    }

    private AngleChart.Curve full(int item) {
        List<Double> shares = percents(item, step -> step.pull()::fullShare);
        return new AngleChart.Curve(name(item), shares, shares);
    }

    private String name(int item) {
        LoadedItem loaded = pull.hookup().items().get(item);
        return loaded.gear() + (loaded.allowedIsAtMost() ? ", at least" : "");
    }

    private List<Double> percents(int item, Function<BlockSweep.Step, Function<LoadedItem, BigDecimal>> share) {
        return sweep.steps().stream()
                .map(step -> share.apply(step)
                        .apply(step.pull().hookup().items().get(item))
                        .multiply(HUNDRED)
                        .doubleValue())
                .toList();
    }

    private Block.Figure figure(
            String name,
            String title,
            String upright,
            List<AngleChart.Curve> curves,
            List<AngleChart.Level> levels,
            List<AngleChart.Strip> strips) {
        AngleChart.Caption caption = new AngleChart.Caption(
                id + "-" + name,
                title + ", " + pull.hookup().id()
                        + ": 150 to 0 degrees between the lines; the figures stand in the table" + " of angles.",
                upright);
        return new Block.Figure(title + ": " + pull.hookup().id(), AngleChart.draw(caption, curves, levels, strips));
    }
}
