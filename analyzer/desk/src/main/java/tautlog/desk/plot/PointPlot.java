package tautlog.desk.plot;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import tautlog.desk.page.Markup;

/** Draws points and curves over a number as one {@code svg} element. The shape of a mark tells series apart, colour only helps. */
public final class PointPlot {
    private static final int LEFT = 84;
    private static final int ACROSS = 660;
    private static final int WIDTH = LEFT + ACROSS + 16;
    private static final int TOP = 46;
    private static final int HEIGHT = 220;
    private static final int BOTTOM = TOP + HEIGHT;

    private final Caption caption;
    private final List<Series> series;
    private final List<Curve> curves;
    private final Scale across;
    private final Scale upright;
    private final StringBuilder out = new StringBuilder();

    private PointPlot(Caption caption, List<Series> series, List<Curve> curves) {
        this.caption = caption;
        this.series = series;
        this.curves = curves;
        across = scale(Point::x, LEFT, ACROSS, 0);
        upright = scale(Point::y, TOP, HEIGHT, 0.08);
    }

    /**
     * What is written round the points.
     *
     * @param id different for every drawing of a page, letters and digits
     * @param description the drawing in words
     * @param across what the level axis shows, with its unit
     * @param upright what the upright axis shows, with its unit
     */
    public record Caption(String id, String description, String across, String upright) {}

    /** Where something is drawn, in the units of the axes; finite. */
    public record Point(double x, double y) {}

    /** Points of one kind. */
    public record Series(String name, Mark mark, List<Point> points) {
        public Series {
            points = List.copyOf(points);
        }
    }

    /** A line through points, in their order; without a name it stands in no legend. */
    public record Curve(String name, Stroke stroke, List<Point> points) {
        public Curve {
            points = List.copyOf(points);
        }
    }

    /** The shape of a point. */
    public enum Mark {
        UPWARD("M0 -5L4.5 4H-4.5Z", "#0b3d91"),
        DOWNWARD("M0 5L4.5 -4H-4.5Z", "#a23b00"),
        ROUND("M-4 0A4 4 0 1 0 4 0A4 4 0 1 0 -4 0Z", "#3d444d");

        private final String path;
        private final String colour;

        Mark(String path, String colour) {
            this.path = path;
            this.colour = colour;
        }
    }

    /** How a curve is drawn. */
    public enum Stroke {
        SOLID(""),
        DASHED(" stroke-dasharray=\"8 4\"");

        private final String dashes;

        Stroke(String dashes) {
            this.dashes = dashes;
        }
    }

    /** @throws IllegalArgumentException if there is no point at all */
    public static String draw(Caption caption, List<Series> series, List<Curve> curves) {
        if (series.stream().allMatch(one -> one.points().isEmpty())) {
            throw new IllegalArgumentException("a plot has one point or more, was given none");
        }
        return new PointPlot(caption, List.copyOf(series), List.copyOf(curves)).draw();
    }

    private Scale scale(ToDoubleFunction<Point> coordinate, int from, int length, double room) {
        double least = all().mapToDouble(coordinate).min().orElseThrow();
        double greatest = all().mapToDouble(coordinate).max().orElseThrow();
        return new Scale(least - room * (greatest - least), greatest, from, length);
    }

    private Stream<Point> all() {
        return Stream.concat(
                series.stream().flatMap(one -> one.points().stream()),
                curves.stream().flatMap(one -> one.points().stream()));
    }

    private String draw() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s\">",
                WIDTH, BOTTOM + 42, caption.id());
        add("<title id=\"%s\">%s</title>", caption.id(), Markup.escape(caption.description()));
        axes();
        curves.forEach(this::curve);
        series.forEach(this::series);
        legend();
        out.append("</svg>");
        return out.toString();
    }

    private void axes() {
        for (double value : upright.ticks(6)) {
            double y = upright.y(value);
            add("<path d=\"M%d %sH%d\" stroke=\"#c3c8ce\" stroke-width=\"1\"/>", LEFT, number(y), LEFT + ACROSS);
            text(LEFT - 6, y + 4, "end", upright.label(value));
        }
        for (double value : across.ticks(8)) {
            add("<path d=\"M%s %dv4\" stroke=\"#1b1f24\"/>", number(x(value)), BOTTOM);
            text(x(value), BOTTOM + 18, "middle", across.label(value));
        }
        add("<path d=\"M%d %dH%d\" stroke=\"#1b1f24\"/>", LEFT, BOTTOM, LEFT + ACROSS);
        text(4, TOP - 10, "start", caption.upright());
        text(LEFT + ACROSS, BOTTOM + 36, "end", caption.across());
    }

    private void curve(Curve curve) {
        StringBuilder path = new StringBuilder();
        for (Point point : curve.points()) {
            path.append(path.length() == 0 ? "M" : "L").append(place(point));
        }
        add(
                "<path class=\"curve\" d=\"%s\" fill=\"none\" stroke=\"#1b1f24\" stroke-width=\"1.2\"%s/>",
                path, curve.stroke().dashes);
    }

    private void series(Series one) {
        for (Point point : one.points()) {
            mark(one.mark(), x(point.x()), upright.y(point.y()));
        }
    }

    private void mark(Mark mark, double x, double y) {
        add(
                "<path class=\"mark\" transform=\"translate(%s %s)\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"1.5\"/>",
                number(x), number(y), mark.path, mark.colour);
    }

    private void legend() {
        double x = LEFT;
        for (Series one : series) {
            mark(one.mark(), x, 12);
            text(x + 10, 16, "start", one.name());
            x += 34 + one.name().length() * 7.5;
        }
        for (Curve curve : curves) {
            if (!curve.name().isEmpty()) {
                add(
                        "<path d=\"M%s 12h24\" stroke=\"#1b1f24\" stroke-width=\"1.2\"%s/>",
                        number(x), curve.stroke().dashes);
                text(x + 30, 16, "start", curve.name());
                x += 54 + curve.name().length() * 7.5;
            }
        }
    }

    /** Pixels from the left: the upright scale, laid down. */
    private double x(double value) {
        return 2 * LEFT + ACROSS - across.y(value);
    }

    private String place(Point point) {
        return number(x(point.x())) + " " + number(upright.y(point.y()));
    }

    private void text(double x, double y, String anchor, String text) {
        add("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\">%s</text>", number(x), number(y), anchor, Markup.escape(text));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private void add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
