package tautlog.desk.plot;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.page.Markup;

/**
 * Draws how much of a whole lies in each cell of a grid as one {@code svg} element. The size of a square tells the amount, its area in
 * proportion; colour tells nothing.
 */
public final class CellPlot {
    private static final int LEFT = 84;
    private static final int ACROSS = 560;
    private static final int WIDTH = LEFT + ACROSS + 96;
    private static final int TOP = 40;
    private static final int HEIGHT = 420;
    private static final int BOTTOM = TOP + HEIGHT;
    /** Pixels; chosen: what is there at all must be seen. */
    private static final double LEAST_SIDE = 2;

    private final Caption caption;
    private final Axis across;
    private final Axis upright;
    private final List<Cell> cells;
    private final StringBuilder out = new StringBuilder();

    private CellPlot(Caption caption, Axis across, Axis upright, List<Cell> cells) {
        this.caption = caption;
        this.across = across;
        this.upright = upright;
        this.cells = cells;
    }

    /**
     * What is written round the cells.
     *
     * @param id different for every drawing of a page, letters and digits
     * @param description the drawing in words
     */
    public record Caption(String id, String description) {}

    /**
     * One side of the grid.
     *
     * @param title with its unit
     * @param cells how many, 1 or more
     * @param labels written at the edges 0, {@code step}, 2 · {@code step} …
     * @param step edges from one label to the next
     * @param line where a line is drawn across the grid, in edges; empty for none
     * @param lineName what it is
     */
    public record Axis(String title, int cells, List<String> labels, int step, OptionalDouble line, String lineName) {
        public Axis {
            labels = List.copyOf(labels);
        }
    }

    /**
     * Something in the cell between two neighbouring edges.
     *
     * @param x from the left, 0 for the first
     * @param y from below, 0 for the first
     * @param share of the greatest cell, above 0 to 1
     * @param words shown where a reader points at it
     */
    public record Cell(int x, int y, double share, String words) {}

    public static String draw(Caption caption, Axis across, Axis upright, List<Cell> cells) {
        return new CellPlot(caption, across, upright, List.copyOf(cells)).draw();
    }

    private String draw() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s\">",
                WIDTH, BOTTOM + 42, caption.id());
        add("<title id=\"%s\">%s</title>", caption.id(), Markup.escape(caption.description()));
        grid();
        cells.forEach(this::cell);
        lines();
        out.append("</svg>");
        return out.toString();
    }

    private void grid() {
        for (int i = 0; i < across.labels().size(); i++) {
            double x = x((double) i * across.step());
            add("<path d=\"M%s %dV%d\" stroke=\"#c3c8ce\" stroke-width=\"1\"/>", number(x), TOP, BOTTOM);
            text(x, BOTTOM + 18, "middle", across.labels().get(i));
        }
        for (int i = 0; i < upright.labels().size(); i++) {
            double y = y((double) i * upright.step());
            add("<path d=\"M%d %sH%d\" stroke=\"#c3c8ce\" stroke-width=\"1\"/>", LEFT, number(y), LEFT + ACROSS);
            text(LEFT - 6, y + 4, "end", upright.labels().get(i));
        }
        text(4, TOP - 16, "start", upright.title());
        text(LEFT + ACROSS, BOTTOM + 36, "end", across.title());
    }

    private void cell(Cell cell) {
        double wide = x(1) - x(0);
        double high = y(0) - y(1);
        double side = Math.sqrt(cell.share());
        double width = Math.max(LEAST_SIDE, (wide - 2) * side);
        double height = Math.max(LEAST_SIDE, (high - 2) * side);
        add(
                "<rect class=\"cell\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"#0b3d91\"><title>%s</title></rect>",
                number(x(cell.x() + 0.5) - width / 2),
                number(y(cell.y() + 0.5) - height / 2),
                number(width),
                number(height),
                Markup.escape(cell.words()));
    }

    private void lines() {
        across.line().ifPresent(edge -> {
            add(
                    "<path class=\"rating\" d=\"M%s %dV%d\" stroke=\"#a23b00\" stroke-width=\"2\" stroke-dasharray=\"2 4\"/>",
                    number(x(edge)), TOP, BOTTOM);
            text(x(edge), TOP - 4, "middle", across.lineName());
        });
        upright.line().ifPresent(edge -> {
            add(
                    "<path class=\"rating\" d=\"M%d %sH%d\" stroke=\"#a23b00\" stroke-width=\"2\" stroke-dasharray=\"8 4\"/>",
                    LEFT, number(y(edge)), LEFT + ACROSS);
            text(LEFT + ACROSS + 4, y(edge) + 4, "start", upright.lineName());
        });
    }

    private double x(double edge) {
        return LEFT + ACROSS * edge / across.cells();
    }

    private double y(double edge) {
        return BOTTOM - HEIGHT * edge / upright.cells();
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
