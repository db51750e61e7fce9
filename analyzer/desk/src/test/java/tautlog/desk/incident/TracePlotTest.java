package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** Reads the drawings back into newtons and holds them against the readings. */
class TracePlotTest {
    /** A tenth of a pixel, as the drawing rounds, of 200 pixels for some 36 kN; and a little. */
    private static final double A_TENTH_OF_A_PIXEL = 30;

    private static final int LEFT = 64;
    private static final Pattern LINE = Pattern.compile("<path d=\"M64 ([0-9.]+)H744\" stroke=\"#c3c8ce\"");
    private static final Pattern LABEL =
            Pattern.compile("<text x=\"58.0\" y=\"([0-9.]+)\" text-anchor=\"end\">([-0-9.]+)</text>");
    private static final Pattern POINT = Pattern.compile("[ML]([0-9]+) ([0-9.]+)");

    private static List<String> drawings;
    private static JsonArray traces;

    @BeforeAll
    static void drawsTheShock(@TempDir Path folder) throws Exception {
        Path html = folder.resolve("incident.html");
        Path recording = SampleDay.write(folder);
        String at = "2026-05-04T07:00:15Z";
        Desk run = Desk.run("incident", recording, "--at", at, "--zone", "UTC", "--html", html);
        assertEquals(0, run.code(), run.err());
        Matcher svg = Pattern.compile("<svg.*?</svg>", Pattern.DOTALL).matcher(Files.readString(html));
        drawings = new ArrayList<>();
        while (svg.find()) {
            drawings.add(svg.group());
        }
        traces = Cases.json(recording, at).getAsJsonObject("outing").getAsJsonArray("traces");
    }

    /** Newtons at a height: two labelled lines of the tension's axis tell it. */
    private static double newtons(String svg, double y) {
        TreeMap<Double, Double> kilonewtons = new TreeMap<>();
        Matcher label = LABEL.matcher(svg);
        while (label.find() && kilonewtons.size() < 3) {
            kilonewtons.put(Double.parseDouble(label.group(1)) - 4, Double.parseDouble(label.group(2)));
        }
        double y0 = kilonewtons.firstKey();
        double y1 = kilonewtons.lastKey();
        double slope = (kilonewtons.get(y1) - kilonewtons.get(y0)) / (y1 - y0);
        return 1_000 * (kilonewtons.get(y0) + slope * (y - y0));
    }

    private static List<double[]> curve(String svg) {
        Matcher path = Pattern.compile("class=\"tension\" d=\"([^\"]*)\"").matcher(svg);
        assertTrue(path.find());
        List<double[]> points = new ArrayList<>();
        Matcher point = POINT.matcher(path.group(1));
        while (point.find()) {
            points.add(new double[] {Integer.parseInt(point.group(1)) - LEFT, Double.parseDouble(point.group(2))});
        }
        return points;
    }

    @Test
    void drawsThreeSpans() {
        assertEquals(3, drawings.size());
        assertTrue(LINE.matcher(drawings.get(0)).find());
    }

    @Test
    void drawsEveryColumnsLeastAndGreatest() {
        for (int i = 0; i < drawings.size(); i++) {
            JsonObject trace = traces.get(i).getAsJsonObject();
            double[] least = new double[680];
            double[] greatest = new double[680];
            java.util.Arrays.fill(least, Double.POSITIVE_INFINITY);
            java.util.Arrays.fill(greatest, Double.NEGATIVE_INFINITY);
            for (double[] point : curve(drawings.get(i))) {
                double newtons = newtons(drawings.get(i), point[1]);
                int column = (int) point[0];
                least[column] = Math.min(least[column], newtons);
                greatest[column] = Math.max(greatest[column], newtons);
            }
            for (int column = 0; column < 680; column++) {
                if (!trace.getAsJsonArray("least_n").get(column).isJsonNull()) {
                    assertEquals(
                            trace.getAsJsonArray("least_n").get(column).getAsDouble(),
                            least[column],
                            A_TENTH_OF_A_PIXEL);
                    assertEquals(
                            trace.getAsJsonArray("greatest_n").get(column).getAsDouble(),
                            greatest[column],
                            A_TENTH_OF_A_PIXEL);
                }
            }
        }
    }

    /** The sample day: slack at 14 s, 17 kN at 15.03 s, 6 kN at 16.5 s. */
    @Test
    void agreesWithTheDayAtCheckedPoints() {
        JsonObject close = traces.get(0).getAsJsonObject();

        assertEquals(100, at(close, "greatest_n", -1.0), 10);
        assertEquals(17_000, at(close, "greatest_n", 0.028), 10);
        assertEquals(6_000, at(close, "least_n", 1.5), 10);
        assertEquals(17_000, greatest(traces.get(1).getAsJsonObject(), 0.03), 10);
        assertEquals(33_000, greatest(traces.get(2).getAsJsonObject(), 12), 10);
    }

    private static double at(JsonObject trace, String key, double seconds) {
        return trace.getAsJsonArray(key).get(column(trace, seconds)).getAsDouble();
    }

    private static double greatest(JsonObject trace, double seconds) {
        return at(trace, "greatest_n", seconds);
    }

    private static int column(JsonObject trace, double seconds) {
        double from = trace.get("from_s").getAsDouble();
        double to = trace.get("to_s").getAsDouble();
        return (int) ((seconds - from) / (to - from) * 680);
    }

    @Test
    void saysInWordsWhatItShows() {
        assertTrue(
                drawings.get(0).contains("tension from 0.09 kN to 17.0 kN"),
                drawings.get(0).substring(0, 400));
        assertTrue(drawings.get(2).contains("hatched where readings are missing"));
    }
}
