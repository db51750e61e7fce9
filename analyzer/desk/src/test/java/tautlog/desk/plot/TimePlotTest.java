package tautlog.desk.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class TimePlotTest {
    private static final int LEFT = 64;

    private static String draw(Columns columns) {
        TimeAxis axis = new TimeAxis(Optional.of(Instant.parse("2026-05-04T07:00:00Z")), ZoneOffset.UTC);
        return TimePlot.draw(columns, new TimePlot.Caption("p0", "a <test>", axis, 1_000, "kN"));
    }

    /** A point of a path, and whether a line leads to it. */
    private record Point(double x, double y, boolean joined) {}

    private static List<Point> path(String svg, String name) {
        Matcher path = Pattern.compile("class=\"" + name + "\" d=\"([^\"]*)\"").matcher(svg);
        assertTrue(path.find(), name);
        List<Point> points = new ArrayList<>();
        Matcher point = Pattern.compile("([ML])([0-9.]+) (-?[0-9.]+)").matcher(path.group(1));
        while (point.find()) {
            points.add(new Point(
                    Double.parseDouble(point.group(2)),
                    Double.parseDouble(point.group(3)),
                    point.group(1).equals("L")));
        }
        return points;
    }

    /** Pixels of a tension, on the axis that the greatest of the drawing sets. */
    private static double y(double kilonewtons, double greatest) {
        return new Scale(0, greatest, 24, 200).y(kilonewtons);
    }

    @Test
    void showsAPeakOfOneSampleInAMillion() {
        Columns columns = new Columns(0, 2_000, TimePlot.COLUMNS);
        for (int k = 0; k < 1_000_000; k++) {
            columns.tension(k / 500.0, k == 777_777 ? 20_000 : 1_000);
        }

        List<Point> points = path(draw(columns), "tension");

        double top = y(20, 20);
        int column = (int) (777_777 / 500.0 / 2_000 * TimePlot.COLUMNS);
        List<Point> peaks =
                points.stream().filter(point -> Math.abs(point.y() - top) < 0.1).toList();
        assertEquals(1, peaks.size());
        assertEquals(LEFT + column, peaks.get(0).x());
    }

    @Test
    void drawsLeastAndGreatestOfEveryColumn() {
        Columns columns = new Columns(0, 680, TimePlot.COLUMNS);
        for (int k = 0; k < 68_000; k++) {
            columns.tension(k / 100.0, 5_000 + 4_000 * Math.sin(k * 0.01));
        }

        List<Point> points = path(draw(columns), "tension");

        for (int second : new int[] {0, 100, 333, 679}) {
            double least = Double.MAX_VALUE;
            double greatest = 0;
            for (int k = second * 100; k < second * 100 + 100; k++) {
                double kilonewtons = 5 + 4 * Math.sin(k * 0.01);
                least = Math.min(least, kilonewtons);
                greatest = Math.max(greatest, kilonewtons);
            }
            int x = LEFT + second;
            double[] drawn = points.stream()
                    .filter(point -> point.x() == x)
                    .mapToDouble(Point::y)
                    .sorted()
                    .toArray();
            assertEquals(y(greatest, 9), drawn[0], 0.1);
            assertEquals(y(least, 9), drawn[drawn.length - 1], 0.1);
        }
    }

    @Test
    void breaksTheLineAtAGapAndHatchesIt() {
        Columns columns = new Columns(0, 680, TimePlot.COLUMNS);
        for (int second = 0; second < 680; second++) {
            if (second < 200 || second > 400) {
                columns.tension(second, 3_000);
            }
        }
        columns.gap(199, 401);

        String svg = draw(columns);

        List<Point> points = path(svg, "tension");
        Point afterGap = points.stream()
                .filter(point -> point.x() >= LEFT + 401)
                .findFirst()
                .orElseThrow();
        assertFalse(afterGap.joined());
        assertTrue(svg.contains("class=\"gap\" x=\"263\""), svg);
    }

    @Test
    void joinsSparseReadingsBetweenWhichNothingIsMissing() {
        Columns columns = new Columns(0, 680, TimePlot.COLUMNS);
        columns.tension(100, 1_000);
        columns.tension(200, 2_000);

        List<Point> points = path(draw(columns), "tension");

        assertTrue(points.get(points.size() - 1).joined());
    }

    @Test
    void drawsTheLimitWhereItWasInForce() {
        Columns columns = new Columns(0, 680, TimePlot.COLUMNS);
        columns.tension(0, 20_000);
        columns.limit(0, 340, 15_000);
        columns.limit(341, 680, 10_000);

        List<Point> points = path(draw(columns), "limit");

        assertEquals(y(15, 20), points.get(0).y(), 0.1);
        assertEquals(y(10, 20), points.get(points.size() - 1).y(), 0.1);
    }

    @Test
    void showsASingleReadingAndTheLimitThatWasInForce() {
        Columns columns = new Columns(0, 10, TimePlot.COLUMNS);
        columns.tension(0, 20_000);
        columns.limit(0, 0, 15_000);

        String svg = draw(columns);
        List<Point> limit = path(svg, "limit");

        assertTrue(svg.contains("<circle class=\"reading\" cx=\"" + LEFT + "\""), svg);
        assertEquals(y(15, 20), limit.get(0).y(), 0.1);
        assertTrue(limit.get(1).x() - limit.get(0).x() >= 20, limit.toString());
    }

    @Test
    void putsNoDotsOnACurve() {
        Columns columns = new Columns(0, 10, TimePlot.COLUMNS);
        for (int k = 0; k < 20; k++) {
            columns.tension(k / 2.0, 1_000);
        }

        assertFalse(draw(columns).contains("<circle"));
    }

    @Test
    void escapesItsDescription() {
        String svg = draw(new Columns(0, 1, TimePlot.COLUMNS));

        assertTrue(svg.contains("a &lt;test&gt;"));
    }

    @Test
    void writesTicksAtRoundLocalTimes() {
        TimeAxis axis = new TimeAxis(Optional.of(Instant.parse("2026-05-04T07:00:07Z")), ZoneId.of("America/New_York"));

        List<TimeAxis.Tick> ticks = axis.ticks(0, 60, 8);

        assertEquals("03:00:10", ticks.get(0).label());
        assertEquals(3, ticks.get(0).seconds(), 1e-9);
    }
}
