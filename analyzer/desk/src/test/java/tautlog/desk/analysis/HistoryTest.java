package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;

class HistoryTest {
    @TempDir
    Path folder;

    private static JsonObject report(Object... files) {
        Object[] arguments = new Object[files.length + 2];
        arguments[0] = "report";
        System.arraycopy(files, 0, arguments, 1, files.length);
        arguments[files.length + 1] = "--json";
        return JsonParser.parseString(Desk.run(arguments).out()).getAsJsonObject();
    }

    @Test
    void countsACopiedRecordingOnce() throws IOException {
        Path original = SampleDay.write(folder);
        Path copy = folder.resolve("copy.tautlog");
        Files.copy(original, copy);

        JsonObject once = report(original);
        JsonObject both = report(folder);

        assertEquals(once.get("hours"), both.get("hours"));
        assertEquals(once.get("pulls"), both.get("pulls"));
        assertTrue(both.getAsJsonArray("notes").toString().contains("counted once"));
    }

    @Test
    void ordersOutingsByTimeHoweverFilesAreGiven() throws IOException {
        Path morning = SampleDay.write(folder, "b.tautlog", 7, 0);
        Path noon = SampleDay.write(folder, "a.tautlog", 8, 18_000);

        JsonObject there = report(noon, morning);
        JsonObject back = report(morning, noon);

        assertEquals(back.get("pulls"), there.get("pulls"));
        assertEquals(8, there.getAsJsonArray("pulls").size());
        assertEquals(
                "2026-05-04T07:00:05.118000Z",
                there.getAsJsonArray("pulls")
                        .get(0)
                        .getAsJsonObject()
                        .get("start")
                        .getAsString());
    }

    @Test
    void addsHoursUpByOutingDayAndInAll() throws IOException {
        SampleDay.write(folder, "a.tautlog", 7, 0);
        SampleDay.write(folder, "b.tautlog", 8, 86_400);

        JsonObject hours = JsonParser.parseString(
                        Desk.run("hours", folder, "--json", "--zone", "UTC").out())
                .getAsJsonObject();

        double day = hours.getAsJsonArray("days")
                .get(0)
                .getAsJsonObject()
                .get("pull_h")
                .getAsDouble();
        assertEquals(2, hours.getAsJsonArray("outings").size());
        assertEquals(2, hours.getAsJsonArray("days").size());
        assertEquals(2 * day, hours.getAsJsonObject("total").get("pull_h").getAsDouble(), 1e-9);
        // opening readings of the rig: 412.0 h and 160.5 h in 2100 pulls
        assertEquals(
                160.5 + 2 * day, hours.getAsJsonObject("meter").get("pull_h").getAsDouble(), 1e-9);
        assertEquals(2108, hours.getAsJsonObject("meter").get("pulls").getAsInt());
    }

    @Test
    void readsAnEmptyFolderAsAnErrorThatNamesIt() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));

        Desk run = Desk.run("hours", empty);

        assertEquals(3, run.code());
        assertTrue(run.err().contains("holds no recording"), run.err());
    }

    @Test
    void addsNoWinchsOpeningReadingToTheSumOfSeveral() throws IOException {
        ShortDay.write(folder, "lower.tautlog", day -> day.hold(3, 3_000));
        ShortDay.write(folder, "upper.tautlog", day -> day.hold(3, 3_000));

        JsonObject hours = JsonParser.parseString(
                        Desk.run("hours", folder, "--json").out())
                .getAsJsonObject();

        assertEquals(
                hours.getAsJsonObject("total").get("pull_h"),
                hours.getAsJsonObject("meter").get("pull_h"));
        assertTrue(hours.getAsJsonObject("opening").get("pull_h").isJsonNull(), "what was before is not known");
        String page = Desk.run("hours", folder).out().replaceAll("\\s+", " ");
        assertTrue(page.contains("what was before them is not known here"), page);
        assertFalse(page.contains("before the first recording"), page);
    }

    @Test
    void namesTheFoldersOfACopyTakenAtMiddayAndUsesTheLongerOne() throws IOException {
        Path noon = Files.createDirectory(folder.resolve("noon"));
        Path evening = Files.createDirectory(folder.resolve("evening"));
        ShortDay.write(noon, "day.tautlog", day -> day.hold(3, 3_000));
        ShortDay.write(evening, "day.tautlog", day -> day.hold(6, 3_000));

        for (JsonObject report : List.of(report(noon, evening), report(evening, noon))) {
            String note = report.getAsJsonArray("notes").get(0).getAsString();

            assertEquals(
                    "Outing 1 of " + noon.resolve("day.tautlog") + " is the beginning of outing 1 of "
                            + evening.resolve("day.tautlog")
                            + ", copied while it went on: counted once, the longer one was used.",
                    note);
            assertEquals(1, report.getAsJsonArray("pulls").size());
        }
    }
}
