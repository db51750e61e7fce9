package tautlog.desk.hours;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;

class HoursCommandTest {
    private static final long DAY = 86_400;

    @TempDir
    Path folder;

    private Path recordings;

    @BeforeEach
    void makeFolder() throws IOException {
        recordings = Files.createDirectory(folder.resolve("recordings"));
    }

    private JsonObject hours(Object... options) {
        return hoursEnding(0, options);
    }

    private JsonObject hoursEnding(int code, Object... options) {
        Object[] arguments = new Object[options.length + 5];
        arguments[0] = "hours";
        arguments[1] = recordings;
        arguments[2] = "--json";
        arguments[3] = "--zone";
        arguments[4] = "UTC";
        System.arraycopy(options, 0, arguments, 5, options.length);
        Desk run = Desk.run(arguments);
        assertEquals(code, run.code(), run.err());
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static List<String> names(JsonObject hours, String list) {
        return hours.getAsJsonArray(list).asList().stream()
                .map(row -> row.getAsJsonObject().get("name").getAsString())
                .toList();
    }

    private void fourDays() throws IOException {
        SampleDay.write(recordings, "a.tautlog", 1, 0); // 4 May 2026
        SampleDay.write(recordings, "b.tautlog", 2, DAY);
        SampleDay.write(recordings, "c.tautlog", 3, 40 * DAY);
        SampleDay.write(recordings, "d.tautlog", 4, 300 * DAY);
    }

    @Test
    void addsUpByMonthAndBySeasonWhereverASeasonBegins() throws IOException {
        fourDays();

        assertEquals(List.of("2026-05", "2026-06", "2027-02"), names(hours(), "months"));
        assertEquals(List.of("2026", "2027"), names(hours(), "seasons"));
        assertEquals(List.of("2025/2026", "2026/2027"), names(hours("--season-from", "05-05"), "seasons"));
        JsonObject winter =
                hours("--season-from", "05-05").getAsJsonArray("seasons").get(1).getAsJsonObject();
        assertEquals(12, winter.get("pulls").getAsInt());
    }

    @Test
    void showsTimeOfWhichNothingIsKnownApart() throws IOException {
        SampleDay.write(recordings, "a.tautlog", 1, 0);
        ShortDay.write(recordings, "other.tautlog", day -> day.hold(59, 3_000));

        JsonObject total = hours().getAsJsonObject("total");

        // 0.4 s are missing at 29 s; no shaft for a minute; the first turn and the last frame of the other
        assertEquals(0.4, total.get("gap_h").getAsDouble() * 3_600, 1e-6);
        assertEquals(60.2, total.get("no_shaft_h").getAsDouble() * 3_600, 0.3);
        assertEquals(120, total.get("logged_h").getAsDouble() * 3_600, 0.5);
        assertTrue(total.get("shaft_h_is_at_least").getAsBoolean());
    }

    @Test
    void leavesOutWhatBeganOutsideTheTimeAskedForAndWithItTheOpeningReadings() throws IOException {
        fourDays();

        JsonObject may = hours("--from", "2026-05-01", "--to", "2026-05-05T07:00:00");

        assertEquals(List.of("2026-05-04"), names(may, "days"));
        assertTrue(may.getAsJsonObject("opening").get("pull_h").isJsonNull());
        assertEquals(4, may.getAsJsonObject("meter").get("pulls").getAsInt());
        assertTrue(Desk.run("hours", recordings, "--from", "2026-05-05").out().contains("began in the time asked for"));
    }

    @Test
    void addsUnrecordedWorkOfTheLedgerToTheMetersAndToNothingElse() throws IOException {
        SampleDay.write(recordings, "a.tautlog", 1, 0);
        Path ledger = Files.writeString(folder.resolve("ledger.jsonl"), """
                {"id":"1","at":"2026-05-06T18:00:00Z","kind":"worked","from":"2026-05-06T07:00:00Z","to":"2026-05-06T11:00:00Z","shaft_h":3.5,"pull_h":1.25,"pulls":40}
                {"id":"2","at":"2026-05-04T18:00:00Z","kind":"worked","from":"2026-05-04T06:00:00Z","to":"2026-05-04T08:00:00Z","shaft_h":1}
                {"id":"3","at":"2026-05-04T18:00:00Z","kind":"worked","winch":"elsewhere","from":"2026-05-04T06:00:00Z","to":"2026-05-04T08:00:00Z","shaft_h":100}
                {"id":"4","at":"2026-05-0
                """);
        JsonObject without = hours();

        JsonObject with = hoursEnding(3, "--ledger", ledger);
        String page = Desk.run("hours", recordings, "--ledger", ledger).out().replaceAll("\\s+", " ");

        assertEquals(without.get("total"), with.get("total"));
        assertEquals(2, with.getAsJsonObject("unlogged").get("entries").getAsInt());
        assertEquals(4.5, meter(with, "shaft_h") - meter(without, "shaft_h"), 1e-9);
        assertEquals(1.25, meter(with, "pull_h") - meter(without, "pull_h"), 1e-9);
        assertEquals(40, meter(with, "pulls") - meter(without, "pulls"));
        assertFalse(with.getAsJsonObject("meter").get("shaft_h_is_at_least").getAsBoolean());
        assertTrue(with.getAsJsonObject("meter").get("pull_h_is_at_least").getAsBoolean());
        assertTrue(page.contains("shaft 4.5 h, pulls at least 1.25 h (1 entry without it)"), page);
        assertTrue(page.contains("both are added up"), page);
        assertTrue(page.contains("ledger.jsonl, line 4: this line is torn"), page);
    }

    private static double meter(JsonObject hours, String key) {
        return hours.getAsJsonObject("meter").get(key).getAsDouble();
    }

    @Test
    void writesAPageWithDrawingsAndATable() throws IOException {
        fourDays();
        Path page = folder.resolve("hours.html");

        Desk run = Desk.run("hours", recordings, "--by", "month", "--zone", "UTC", "--html", page, "--csv", "-");

        assertEquals(0, run.code(), run.err());
        List<String> lines = run.out().lines().toList();
        assertEquals(4, lines.size(), run.out());
        assertTrue(lines.get(0).startsWith("name,start,end,shaft_h,"), lines.get(0));
        assertTrue(lines.get(1).startsWith("2026-05,2026-05-04T07:00:00.000000Z,"), lines.get(1));
        String html = Files.readString(page);
        assertTrue(html.contains("<svg"), "load bands are drawn");
        assertTrue(html.contains("Driveline of upper-landing"), html);
        assertTrue(html.contains("By month") && !html.contains("By outing"), html);
    }

    @Test
    void countsTimeThatTwoOutingsOfAWinchTellOnce() throws IOException {
        SampleDay.write(recordings, "a.tautlog", 1, 0);
        SampleDay.write(recordings, "b.tautlog", 2, 30);

        Desk run = Desk.run("hours", recordings, "--json");
        double logged = JsonParser.parseString(run.out())
                .getAsJsonObject()
                .getAsJsonObject("total")
                .get("logged_h")
                .getAsDouble();

        assertEquals(90, logged * 3_600, 0.5);
        assertTrue(Desk.run("hours", recordings).out().contains("OVERLAP"), run.out());
    }

    @Test
    void saysWhatIsWrongWithItsOptions() {
        assertEquals(2, Desk.run("hours", recordings, "--by", "week").code());
        assertTrue(Desk.run("hours", recordings, "--by", "week").err().contains("Allowed: outing, day, month, season"));
        assertEquals(2, Desk.run("hours", recordings, "--season-from", "13-01").code());
        assertEquals(
                2,
                Desk.run("hours", recordings, "--ledger", folder.resolve("none"))
                        .code());
        assertEquals(
                2,
                Desk.remembering("hours", recordings, "--cache", folder, "--no-cache")
                        .code());
    }
}
