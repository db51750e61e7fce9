package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;

/** A converter at its end stop gives lower bounds, and every form of the report says so. */
class EndStopTest {
    private static final int END_STOP = 8_388_607;
    /** The example rig's cell may carry 60 kN; one count a newton. A count more is beyond it. */
    private static final int CAPACITY = 60_000;

    @TempDir
    Path folder;

    /** A snap, then a jolt, both {@code height} counts high; one pull. */
    private Path day(int height) throws IOException {
        return ShortDay.write(folder, height + ".tautlog", day -> {
            day.hold(1, 0);
            day.hold(0.1, height);
            day.hold(3, 5_000);
            day.hold(0.1, height);
            day.hold(3, 5_000);
        });
    }

    private static List<Boolean> atLeast(JsonObject report, String list) {
        JsonArray found = report.getAsJsonArray(list);
        return found.asList().stream()
                .map(entry -> entry.getAsJsonObject().get("at_least").getAsBoolean())
                .toList();
    }

    private static JsonObject json(Path recording) {
        return JsonParser.parseString(Desk.run("report", recording, "--json").out())
                .getAsJsonObject();
    }

    @Test
    void jsonSaysAtLeastOfPullShockAndJoltAtTheEndStopAndBeyondTheCellsCapacityOnly() throws IOException {
        JsonObject stopped = json(day(END_STOP));
        JsonObject beyond = json(day(CAPACITY + 1));
        JsonObject within = json(day(CAPACITY));

        for (String list : List.of("pulls", "shocks", "jolts")) {
            assertEquals(List.of(true), atLeast(stopped, list), list);
            assertEquals(List.of(true), atLeast(beyond, list), list);
            assertEquals(List.of(false), atLeast(within, list), list);
        }
        assertEquals(List.of(true, true), atLeast(stopped, "overloads"));
    }

    @Test
    void tableSaysAtLeastInItsColumn() throws IOException {
        List<List<String>> rows = Desk.run("report", day(END_STOP), "--csv", "-")
                .out()
                .lines()
                .map(line -> List.of(line.split(",", -1)))
                .toList();

        int column = rows.get(0).indexOf("at_least");
        List<String> said = rows.stream()
                .filter(row -> List.of("pull", "shock", "jolt").contains(row.get(0)))
                .map(row -> row.get(0) + " " + row.get(column))
                .sorted()
                .toList();
        assertEquals(List.of("jolt true", "pull true", "shock true"), said);
    }

    @Test
    void textMarksPeakMeanAndShareOfThePull() throws IOException {
        String page = Desk.run("report", day(END_STOP)).out().replaceAll("\\s+", " ");

        assertTrue(page.contains("≥ 8388.6 ≥ "), page);
        assertTrue(page.contains("≥ at a peak: the reading was at its own end"), page);
        assertTrue(page.contains("snapped tight to at least 8388.6 kN"), page);
    }
}
