package tautlog.desk.plot;

import java.util.List;
import java.util.Locale;
import tautlog.desk.page.Markup;

/** Draws figures as lying bars, each with its name and its figure in words, as one {@code svg} element. */
public final class BarPlot {
    private static final int LEFT = 150;
    private static final int ACROSS = 480;
    private static final int WIDTH = LEFT + ACROSS + 130;
    private static final int TOP = 28;
    private static final int ROW = 26;
    private static final int THICK = 16;

    private BarPlot() {}

    /**
     * One bar.
     *
     * @param value 0 or more
     * @param words the figure with its unit, written behind the bar
     * @param isMarked drawn hatched: what is past a limit, or not known
     */
    public record Bar(String name, double value, String words, boolean isMarked) {}

    /**
     * The drawing.
     *
     * @param id different for every drawing of a page, letters and digits
     * @param description the drawing in words
     * @param title what the bars show, with its unit
     */
    public static String draw(String id, String description, String title, List<Bar> bars) {
        double most = bars.stream().mapToDouble(Bar::value).max().orElse(0);
        StringBuilder out = new StringBuilder();
        int height = TOP + bars.size() * ROW + 8;
        add(
                out,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s\">",
                WIDTH,
                height,
                id);
        add(out, "<title id=\"%s\">%s</title>", id, Markup.escape(description));
        add(out, "<defs><pattern id=\"h%s\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\">", id);
        add(out, "<path d=\"M0 6L6 0\" stroke=\"#1b1f24\" stroke-width=\"1.5\"/></pattern></defs>");
        add(out, "<text x=\"4\" y=\"16\">%s</text>", Markup.escape(title));
        for (int i = 0; i < bars.size(); i++) {
            bar(out, id, bars.get(i), TOP + i * ROW, most > 0 ? ACROSS / most : 0);
        }
        add(out, "<path d=\"M%d %dV%d\" stroke=\"#1b1f24\"/>", LEFT, TOP, height - 8);
        return out.append("</svg>").toString();
    }

    private static void bar(StringBuilder out, String id, Bar bar, int y, double pixelsPerUnit) {
        double length = bar.value() * pixelsPerUnit;
        add(
                out,
                "<text x=\"%d\" y=\"%d\" text-anchor=\"end\">%s</text>",
                LEFT - 6,
                y + THICK - 3,
                Markup.escape(bar.name()));
        add(
                out,
                "<rect class=\"bar\" x=\"%d\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\" stroke=\"#1b1f24\"/>",
                LEFT,
                y,
                length,
                THICK,
                bar.isMarked() ? "url(#h" + id + ")" : "#6b8cc4");
        add(out, "<text x=\"%.1f\" y=\"%d\">%s</text>", LEFT + length + 6, y + THICK - 3, Markup.escape(bar.words()));
    }

    private static void add(StringBuilder out, String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
