package tautlog.desk.plot;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.page.Markup;

/**
 * Draws {@link Columns} as one {@code svg} element: tension with its limit above, shaft speed below when there is any.
 *
 * <p>Line style and hatching tell the curves apart, colour only helps. Drawn for {@value #COLUMNS} columns.
 */
public final class TimePlot {
    /** Pixel columns of the drawing. */
    public static final int COLUMNS = 680;

    /** Pixels; chosen: two dashes, so that a limit in force for one reading only is seen. */
    private static final int SHORTEST_LIMIT = 24;

    /** Pixels. */
    private static final int DOT_RADIUS = 3;

    private static final int LEFT = 64;
    private static final int WIDTH = LEFT + COLUMNS + 16;
    private static final int TOP = 24;
    private static final int TENSION_HEIGHT = 200;
    private static final int SHAFT_TOP = TOP + TENSION_HEIGHT + 30;
    private static final int SHAFT_HEIGHT = 70;
    private static final int TIME_TICKS = 8;

    private final Columns columns;
    private final Caption caption;
    private final StringBuilder out = new StringBuilder();

    private TimePlot(Columns columns, Caption caption) {
        this.columns = columns;
        this.caption = caption;
    }

    /**
     * What is written round the curves.
     *
     * @param id different for every drawing of a page, letters and digits
     * @param description the drawing in words
     * @param newtonsPerUnit of the unit on the axis
     * @param unit its name
     * @param moment marked by an upright line, seconds on the axis; empty for none
     */
    public record Caption(
            String id, String description, TimeAxis axis, double newtonsPerUnit, String unit, OptionalDouble moment) {
        /** Nothing is marked. */
        public Caption(String id, String description, TimeAxis axis, double newtonsPerUnit, String unit) {
            this(id, description, axis, newtonsPerUnit, unit, OptionalDouble.empty());
        }
    }

    /** @param columns as wide as {@link #COLUMNS} */
    public static String draw(Columns columns, Caption caption) {
        if (columns.width() != COLUMNS) {
            throw new IllegalArgumentException("a plot has " + COLUMNS + " columns, was given " + columns.width());
        }
        return new TimePlot(columns, caption).draw();
    }

    private String draw() {
        boolean shaft = columns.hasShaft();
        int bottom = shaft ? SHAFT_TOP + SHAFT_HEIGHT : TOP + TENSION_HEIGHT;
        open(bottom + 24);
        gaps(bottom);
        tension();
        if (shaft) {
            shaft();
        }
        times(bottom);
        caption.moment().ifPresent(seconds -> moment(seconds, bottom));
        out.append("</svg>");
        return out.toString();
    }

    private void open(int height) {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s\">",
                WIDTH, height, caption.id());
        add("<title id=\"%s\">%s</title>", caption.id(), Markup.escape(caption.description()));
        add("<defs><pattern id=\"h%s\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\">", caption.id());
        add("<path d=\"M0 6L6 0\" stroke=\"#6b7280\" stroke-width=\"1\"/></pattern></defs>");
    }

    private void gaps(int bottom) {
        int width = columns.width();
        for (int c = 0; c < width; c++) {
            int first = c;
            while (c < width && columns.isGap(c)) {
                c++;
            }
            if (c > first) {
                add(
                        "<rect class=\"gap\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"url(#h%s)\"/>",
                        LEFT + first, TOP, c - first, bottom - TOP, caption.id());
                if (c - first > 40) {
                    text(LEFT + (first + c) / 2.0, TOP + 14, "middle", "gap");
                }
            }
        }
    }

    private void tension() {
        Scale scale = new Scale(
                columns.leastTension() / caption.newtonsPerUnit(),
                Math.max(columns.greatestTension(), columns.greatestLimit()) / caption.newtonsPerUnit(),
                TOP,
                TENSION_HEIGHT);
        scaleLines(scale, 6);
        text(4, 14, "start", "tension, " + caption.unit());
        double unit = caption.newtonsPerUnit();
        add(
                "<path class=\"tension\" d=\"%s\" fill=\"none\" stroke=\"#0b3d91\" stroke-width=\"1.2\" stroke-linecap=\"square\"/>",
                curve(scale, columns::hasTension, c -> columns.least(c) / unit, c -> columns.greatest(c) / unit));
        dots(scale);
        limit(scale);
    }

    /** A reading that no line leads to or from, the only one or one between two gaps, would be a speck. */
    private void dots(Scale scale) {
        int readings = 0;
        int latest = 0;
        for (int c = 0; c < columns.width(); c++) {
            if (columns.hasTension(c)) {
                readings++;
                latest = c;
            }
            if (columns.isGap(c) || c == columns.width() - 1) {
                if (readings == 1) {
                    dot(latest, scale.y(columns.greatest(latest) / caption.newtonsPerUnit()));
                }
                readings = 0;
            }
        }
    }

    private void dot(int column, double y) {
        add(
                "<circle class=\"reading\" cx=\"%d\" cy=\"%s\" r=\"%d\" fill=\"#0b3d91\"/>",
                LEFT + column, number(y), DOT_RADIUS);
    }

    private void limit(Scale scale) {
        StringBuilder path = new StringBuilder();
        int last = -1;
        for (int c = 0; c < columns.width(); c = Math.max(c, last) + 1) {
            double newtons = columns.limit(c);
            if (Double.isFinite(newtons)) {
                last = c;
                while (last + 1 < columns.width() && columns.limit(last + 1) == newtons) {
                    last++;
                }
                int end = Math.min(COLUMNS, Math.max(last + 1, c + SHORTEST_LIMIT));
                double y = scale.y(newtons / caption.newtonsPerUnit());
                path.append("M").append(point(c, y)).append("L").append(point(end, y));
            }
        }
        if (last >= 0) {
            add(
                    "<path class=\"limit\" d=\"%s\" fill=\"none\" stroke=\"#a23b00\" stroke-width=\"2\" stroke-dasharray=\"8 4\"/>",
                    path);
            double y = scale.y(columns.limit(last) / caption.newtonsPerUnit());
            text(LEFT + COLUMNS, y - 5, "end", "limit");
        }
    }

    private void shaft() {
        Scale scale = new Scale(0, columns.greatestShaft(), SHAFT_TOP, SHAFT_HEIGHT);
        scaleLines(scale, 3);
        text(4, SHAFT_TOP - 8, "start", "shaft, rpm");
        add(
                "<path class=\"shaft\" d=\"%s\" fill=\"none\" stroke=\"#3d444d\" stroke-width=\"1.2\" stroke-linecap=\"square\"/>",
                curve(scale, columns::hasShaft, columns::leastRpm, columns::greatestRpm));
    }

    private interface Present {
        boolean at(int column);
    }

    private interface Value {
        double at(int column);
    }

    /** Least and greatest of every column, the nearer first, joined to the column before unless a gap lies between. */
    private String curve(Scale scale, Present present, Value least, Value greatest) {
        StringBuilder path = new StringBuilder();
        boolean joined = false;
        double before = 0;
        for (int c = 0; c < columns.width(); c++) {
            if (present.at(c)) {
                boolean up = Math.abs(before - least.at(c)) <= Math.abs(before - greatest.at(c));
                double first = up ? least.at(c) : greatest.at(c);
                double second = up ? greatest.at(c) : least.at(c);
                path.append(joined ? "L" : "M").append(point(c, scale.y(first)));
                path.append("L").append(point(c, scale.y(second)));
                before = second;
                joined = !columns.isGap(c);
            } else if (columns.isGap(c)) {
                joined = false;
            }
        }
        return path.toString();
    }

    private void scaleLines(Scale scale, int most) {
        for (double value : scale.ticks(most)) {
            double y = scale.y(value);
            add("<path d=\"M%d %sH%d\" stroke=\"#c3c8ce\" stroke-width=\"1\"/>", LEFT, number(y), LEFT + COLUMNS);
            text(LEFT - 6, y + 4, "end", scale.label(value));
        }
    }

    private void times(int bottom) {
        List<TimeAxis.Tick> ticks = caption.axis().ticks(columns.from(), columns.to(), TIME_TICKS);
        for (TimeAxis.Tick tick : ticks) {
            int x = LEFT + columns.column(tick.seconds());
            add("<path d=\"M%d %dv4\" stroke=\"#1b1f24\"/>", x, bottom);
            boolean late = x > LEFT + COLUMNS - 24;
            text(late ? LEFT + COLUMNS : x, bottom + 18, late ? "end" : "middle", tick.label());
        }
        add("<path d=\"M%d %dH%d\" stroke=\"#1b1f24\"/>", LEFT, bottom, LEFT + COLUMNS);
    }

    private void moment(double seconds, int bottom) {
        int column = columns.column(seconds);
        if (column >= 0) {
            int x = LEFT + column;
            boolean late = column > COLUMNS / 2;
            add(
                    "<path class=\"moment\" d=\"M%d %dV%d\" stroke=\"#1b1f24\" stroke-width=\"1\" stroke-dasharray=\"2 3\"/>",
                    x, TOP - 8, bottom);
            text(late ? x - 4 : x + 4, TOP - 6, late ? "end" : "start", "asked for");
        }
    }

    private void text(double x, double y, String anchor, String text) {
        add("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\">%s</text>", number(x), number(y), anchor, Markup.escape(text));
    }

    private static String point(int column, double y) {
        return (LEFT + column) + " " + number(y);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private void add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
