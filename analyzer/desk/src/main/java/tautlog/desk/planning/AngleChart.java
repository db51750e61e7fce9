package tautlog.desk.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import tautlog.desk.page.Markup;

/**
 * Draws curves over the angle between the lines as it closes, 150 degrees on the left, 0 on the right, as one {@code svg}
 * element. Dashes and names tell curves apart, colour only helps.
 */
final class AngleChart {
    private static final int LEFT = 64;
    private static final int ACROSS = 560;
    private static final int WIDTH = LEFT + ACROSS + 136;
    private static final int TOP = 28;
    private static final int HEIGHT = 240;
    private static final int BOTTOM = TOP + HEIGHT;
    private static final int STRIP = 34;
    /** Pixels of a letter at 13 pixels' height, on the wide side. */
    private static final double LETTER = 7.5;

    private static final String[] DASHES = {"", "9 4", "2 3", "12 4 2 4", "6 6", "3 2 1 2"};
    private static final String[] COLOURS = {"#0b3d91", "#a23b00", "#1b1f24", "#5b3f8f", "#00595c", "#6b5300"};

    private final Caption caption;
    private final double greatest;
    private final StringBuilder out = new StringBuilder();

    private AngleChart(Caption caption, double greatest) {
        this.caption = caption;
        this.greatest = greatest;
    }

    /**
     * What is written round the curves.
     *
     * @param id different for every drawing of a page, letters, digits and hyphens
     * @param description the drawing in words
     * @param upright what the upright axis shows, with its unit
     */
    record Caption(String id, String description, String upright) {}

    /** A curve from 150 degrees to 0, a value for each; a band when {@code low} differs from {@code high}. */
    record Curve(String name, List<Double> low, List<Double> high) {}

    /** A level that holds at every angle. */
    record Level(String name, double value) {}

    /** A bar under the axis that says what holds from where to where. */
    record Strip(String name, List<BlockSweep.Stretch> stretches) {}

    private record Label(String text, double y, String colour) {}

    static String draw(Caption caption, List<Curve> curves, List<Level> levels, List<Strip> strips) {
        double greatest = curves.stream()
                .flatMap(curve -> curve.high().stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        double level = levels.stream().mapToDouble(Level::value).max().orElse(0);
        return new AngleChart(caption, Math.max(greatest, level) * 1.05).draw(curves, levels, strips);
    }

    private String draw(List<Curve> curves, List<Level> levels, List<Strip> strips) {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s\">",
                WIDTH, BOTTOM + 48 + strips.size() * STRIP, caption.id());
        add("<title id=\"%s\">%s</title>", caption.id(), Markup.escape(caption.description()));
        axes();
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < curves.size(); i++) {
            labels.add(curve(curves.get(i), DASHES[i % DASHES.length], COLOURS[i % COLOURS.length]));
        }
        levels.forEach(level -> labels.add(level(level)));
        labels(labels);
        for (int i = 0; i < strips.size(); i++) {
            strip(strips.get(i), BOTTOM + 50 + i * STRIP);
        }
        out.append("</svg>");
        return out.toString();
    }

    private void axes() {
        double step = step();
        for (int k = 0; k * step <= greatest; k++) {
            double y = y(k * step);
            add("<path d=\"M%d %sH%d\" stroke=\"#c3c8ce\" stroke-width=\"1\"/>", LEFT, number(y), LEFT + ACROSS);
            text(LEFT - 6, y + 4, "end", tick(k * step));
        }
        for (int degrees = BlockSweep.WIDEST_DEGREES; degrees >= 0; degrees -= 30) {
            add("<path d=\"M%s %dv4\" stroke=\"#1b1f24\"/>", number(x(degrees)), BOTTOM);
            text(x(degrees), BOTTOM + 17, "middle", degrees + "°");
        }
        add("<path d=\"M%d %dH%d\" stroke=\"#1b1f24\"/>", LEFT, BOTTOM, LEFT + ACROSS);
        text(4, TOP - 12, "start", caption.upright());
        text(LEFT + ACROSS, BOTTOM + 34, "end", "angle between the lines at the block, closing");
    }

    /** A round distance that gives at most about six lines. */
    private double step() {
        double rough = greatest / 6;
        double decade = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double factor : new double[] {1, 2, 5}) {
            if (decade * factor >= rough) {
                return decade * factor;
            }
        }
        return decade * 10;
    }

    private Label curve(Curve curve, String dashes, String colour) {
        StringBuilder area = new StringBuilder(path(curve.high()));
        boolean isBand = !curve.low().equals(curve.high());
        if (isBand) {
            for (int degrees = 0; degrees <= BlockSweep.WIDEST_DEGREES; degrees++) {
                area.append('L').append(place(degrees, curve.low()));
            }
            add("<path class=\"band\" d=\"%sZ\" fill=\"%s\" fill-opacity=\"0.12\"/>", area, colour);
            line(path(curve.low()), dashes, colour, 1);
        }
        line(path(curve.high()), dashes, colour, 2);
        return new Label(curve.name(), y(curve.high().get(BlockSweep.WIDEST_DEGREES)), colour);
    }

    private void line(String path, String dashes, String colour, int width) {
        add(
                "<path class=\"curve\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%d\" stroke-dasharray=\"%s\"/>",
                path, colour, width, dashes.isEmpty() ? "none" : dashes);
    }

    private Label level(Level level) {
        add(
                "<path class=\"level\" d=\"M%d %sH%d\" stroke=\"#1b1f24\" stroke-width=\"3\"/>",
                LEFT, number(y(level.value())), LEFT + ACROSS);
        return new Label(level.name(), y(level.value()), "#1b1f24");
    }

    /** Beside the right ends, pushed apart where they would stand on each other, tied to their ends. */
    private void labels(List<Label> labels) {
        double free = TOP;
        List<Label> sorted =
                labels.stream().sorted(Comparator.comparingDouble(Label::y)).toList();
        for (Label label : sorted) {
            double y = Math.max(label.y(), free);
            free = y + 16;
            add(
                    "<path d=\"M%d %sL%d %s\" stroke=\"%s\" stroke-width=\"1\"/>",
                    LEFT + ACROSS, number(label.y()), LEFT + ACROSS + 12, number(y), label.colour());
            text(LEFT + ACROSS + 15, y + 4, "start", fitted(label.text(), WIDTH - LEFT - ACROSS - 15));
        }
    }

    /** As many letters as the room has at the usual width of one; the whole word stands in the page's table. */
    private static String fitted(String word, double pixels) {
        int room = (int) (pixels / LETTER);
        if (word.length() <= room) {
            return word;
        }
        return room < 2 ? "" : word.substring(0, room - 1) + "…";
    }

    private void strip(Strip strip, double y) {
        text(LEFT, y + 4, "start", strip.name());
        boolean isShaded = true;
        for (BlockSweep.Stretch stretch : strip.stretches()) {
            double from = stretch.fromDegrees() == BlockSweep.WIDEST_DEGREES ? LEFT : x(stretch.fromDegrees() + 0.5);
            double to = stretch.toDegrees() == 0 ? LEFT + ACROSS : x(stretch.toDegrees() - 0.5);
            add(
                    "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"17\" fill=\"%s\" stroke=\"#1b1f24\"/>",
                    number(from), number(y + 8), number(to - from), isShaded ? "#e3e7eb" : "#ffffff");
            text((from + to) / 2, y + 21, "middle", fitted(stretch.word(), to - from));
            isShaded = !isShaded;
        }
    }

    private String path(List<Double> values) {
        StringBuilder path = new StringBuilder();
        for (int degrees = BlockSweep.WIDEST_DEGREES; degrees >= 0; degrees--) {
            path.append(path.length() == 0 ? "M" : "L").append(place(degrees, values));
        }
        return path.toString();
    }

    private String place(int degrees, List<Double> values) {
        return number(x(degrees)) + " " + number(y(values.get(BlockSweep.WIDEST_DEGREES - degrees)));
    }

    private static double x(double degrees) {
        return LEFT + ACROSS * (BlockSweep.WIDEST_DEGREES - degrees) / BlockSweep.WIDEST_DEGREES;
    }

    private double y(double value) {
        return TOP + HEIGHT * (greatest - value) / greatest;
    }

    private static String tick(double value) {
        return new java.math.BigDecimal(value)
                .round(new java.math.MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
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
