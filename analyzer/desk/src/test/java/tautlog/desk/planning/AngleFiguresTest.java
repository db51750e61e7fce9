package tautlog.desk.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tautlog.desk.page.Block;
import tautlog.fixtures.Rigs;
import tautlog.quantity.ForceUnit;

/** The drawings hold the figures: points are read back from the svg and compared with the statics. */
class AngleFiguresTest {
    private static final Pattern CURVE =
            Pattern.compile("<path class=\"curve\" d=\"([^\"]*)\" fill=\"none\" stroke=\"[^\"]*\" stroke-width=\"2\"");
    private static final Pattern TICK =
            Pattern.compile("<text x=\"58.0\" y=\"([\\d.]+)\" text-anchor=\"end\">([\\d.]+)<");

    private static List<Block.Figure> figures() {
        PullPlan plan = Plans.of(Rigs.parsed(Rigs.exampleText()), Plans.TONNE, "0.5..0.8", "0 deg");
        PlannedPull corner = plan.pulls().get(1);
        return new AngleFigures(corner, BlockSweep.of(corner), ForceUnit.KN, "h2").all();
    }

    /** Pixels from the top of the last upper curve at so many degrees. */
    private static double pixels(String svg, int curve, int degrees) {
        Matcher matcher = CURVE.matcher(svg);
        for (int i = 0; i <= curve; i++) {
            assertTrue(matcher.find(), "curve " + i);
        }
        String[] points = matcher.group(1).substring(1).split("L");
        return Double.parseDouble(points[150 - degrees].split(" ")[1]);
    }

    /** What stands at that height, by the axis' own labels. */
    private static double value(String svg, double pixels) {
        Matcher tick = TICK.matcher(svg);
        List<double[]> ticks = new ArrayList<>();
        while (tick.find()) {
            ticks.add(new double[] {Double.parseDouble(tick.group(1)) - 4, Double.parseDouble(tick.group(2))});
        }
        double[] first = ticks.get(0);
        double[] last = ticks.get(ticks.size() - 1);
        return first[1] + (pixels - first[0]) * (last[1] - first[1]) / (last[0] - first[0]);
    }

    @Test
    void theBlocksLoadAtFullPullIsTwiceTheCosineOfHalfTheAngle() {
        String svg = figures().get(0).svg();

        for (int degrees : new int[] {150, 120, 90, 60, 0}) {
            double load = 40 * 2 * Math.cos(Math.toRadians(degrees / 2.0));
            assertEquals(
                    load, value(svg, pixels(svg, 1, degrees)), 0.1, "at " + degrees); // a tenth of a pixel is 0.04 kN
        }
    }

    @Test
    void theExpectedPullsUpperEdgeIsThatOfTheHeaviestLogAndTheRoughestGround() {
        String svg = figures().get(0).svg();

        assertEquals(0.8 * 1.2 * 9.80665 * 2, value(svg, pixels(svg, 0, 0)), 0.1);
    }

    @Test
    void theStrapsShareAtFullPullIsDrawnAndNamedWithWhatGoverns() {
        String svg = figures().get(2).svg();

        assertEquals(100 * 40 * 2 / 20.0, value(svg, pixels(svg, 2, 0)), 0.5);
        assertEquals(100 * 40 / 20.0, value(svg, pixels(svg, 2, 120)), 0.5);
        assertTrue(svg.contains(">sets the limit<") && svg.contains(">breaks first, of those known<"), svg);
        assertTrue(svg.contains("<title id=\"h2-full\">"), svg);
    }

    @Test
    void thereAreLoadsExpectedSharesAndSharesAtFullPull() {
        List<String> titles = figures().stream().map(Block.Figure::title).toList();

        assertEquals(
                List.of(
                        "Load on block and strap as the angle closes: round-the-corner",
                        "Share of each item's limit at the expected pull: round-the-corner",
                        "Share of each item's limit if it hangs up: the winch's full pull: round-the-corner"),
                titles);
    }
}
