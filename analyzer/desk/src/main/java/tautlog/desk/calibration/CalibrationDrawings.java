package tautlog.desk.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import tautlog.desk.page.Block;
import tautlog.desk.plot.PointPlot;
import tautlog.quantity.ForceUnit;

/** Response, residuals and hysteresis drawn over the load. */
public final class CalibrationDrawings {
    /** Chosen: enough that a parabola looks smooth. */
    private static final int CURVE_POINTS = 60;

    private final CalibrationStudy study;
    private final ForceUnit unit;

    private CalibrationDrawings(CalibrationStudy study, ForceUnit unit) {
        this.study = study;
        this.unit = unit;
    }

    /** Two or three figures; hysteresis only where a load was come to both ways. */
    public static List<Block.Figure> of(CalibrationStudy study, ForceUnit unit) {
        CalibrationDrawings drawings = new CalibrationDrawings(study, unit);
        List<Block.Figure> figures = new ArrayList<>();
        figures.add(drawings.response());
        figures.add(drawings.residuals());
        if (study.behaviour().hysteresis().isPresent()) {
            figures.add(drawings.hysteresis());
        }
        return figures;
    }

    private Block.Figure response() {
        List<PointPlot.Series> series =
                readings(i -> study.readings().readings().get(i).counts().doubleValue());
        PointPlot.Curve fit = new PointPlot.Curve(
                "fit", PointPlot.Stroke.SOLID, along(study.chosen().fit()::response));
        return figure("Counts over load", "response", "counts", series, List.of(fit));
    }

    private Block.Figure residuals() {
        List<PointPlot.Series> series = readings(study::residualNewtons);
        List<PointPlot.Curve> curves = new ArrayList<>();
        curves.add(new PointPlot.Curve("fit", PointPlot.Stroke.SOLID, along(newtons -> 0)));
        double limit = study.lowerLimitNewtons();
        curves.add(new PointPlot.Curve("± lower limit factor", PointPlot.Stroke.DASHED, along(newtons -> limit)));
        curves.add(new PointPlot.Curve("", PointPlot.Stroke.DASHED, along(newtons -> -limit)));
        return figure("Residuals over load: reading less fit", "residuals", "residual, N", series, curves);
    }

    private Block.Figure hysteresis() {
        List<PointPlot.Point> points = Behaviour.loops(study.steps()).stream()
                .map(loop -> new PointPlot.Point(
                        inUnit(loop.newtons()), study.chosen().newtons(loop.counts())))
                .toList();
        return figure(
                "Hysteresis over load: down less up",
                "hysteresis",
                "difference, N",
                List.of(new PointPlot.Series("down less up", PointPlot.Mark.ROUND, points)),
                List.of(new PointPlot.Curve("none", PointPlot.Stroke.SOLID, along(newtons -> 0))));
    }

    private Block.Figure figure(
            String title, String id, String upright, List<PointPlot.Series> series, List<PointPlot.Curve> curves) {
        String description = title + ", " + unit.format(study.leastNewtons()) + " to "
                + unit.format(study.greatestNewtons()) + "; the figures stand in the table of readings.";
        PointPlot.Caption caption = new PointPlot.Caption(id, description, "load, " + unit.symbol(), upright);
        return new Block.Figure(title, PointPlot.draw(caption, series, curves));
    }

    private interface Figures {
        double of(int reading);
    }

    /** One series for each way that loads were come to. */
    private List<PointPlot.Series> readings(Figures figures) {
        List<PointPlot.Series> series = new ArrayList<>();
        for (Direction way : Direction.values()) {
            List<PointPlot.Point> points = points(way, figures);
            if (!points.isEmpty()) {
                series.add(new PointPlot.Series(name(way), mark(way), points));
            }
        }
        return series;
    }

    private List<PointPlot.Point> points(Direction way, Figures figures) {
        List<LoadReading> all = study.readings().readings();
        return IntStream.range(0, all.size())
                .filter(i -> all.get(i).direction() == way)
                .mapToObj(i -> new PointPlot.Point(inUnit(all.get(i).newtons().doubleValue()), figures.of(i)))
                .toList();
    }

    private static String name(Direction way) {
        return way == Direction.UNSAID ? "reading" : "reading, " + way.word();
    }

    private static PointPlot.Mark mark(Direction way) {
        return way == Direction.UP
                ? PointPlot.Mark.UPWARD
                : way == Direction.DOWN ? PointPlot.Mark.DOWNWARD : PointPlot.Mark.ROUND;
    }

    private List<PointPlot.Point> along(DoubleUnaryOperator curve) {
        double from = Math.min(0, study.leastNewtons());
        double span = study.greatestNewtons() - from;
        return IntStream.rangeClosed(0, CURVE_POINTS)
                .mapToObj(i -> from + span * i / CURVE_POINTS)
                .map(newtons -> new PointPlot.Point(inUnit(newtons), curve.applyAsDouble(newtons)))
                .toList();
    }

    private double inUnit(double newtons) {
        return newtons / unit.newtons().doubleValue();
    }
}
