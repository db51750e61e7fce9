package tautlog.desk.importing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class ImportTest {
    @TempDir
    Path folder;

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Desk run(Path readings, String... more) throws IOException {
        Path rig = file("rig.toml", SampleDay.rigToml());
        Object[] arguments = new Object[6 + more.length];
        arguments[0] = "import";
        arguments[1] = readings;
        arguments[2] = "--rig";
        arguments[3] = rig;
        arguments[4] = "-o";
        arguments[5] = folder.resolve("out");
        System.arraycopy(more, 0, arguments, 6, more.length);
        return Desk.run(arguments);
    }

    private List<String> samples(Desk imported) {
        assertEquals(0, imported.code(), imported.err());
        return Desk.run("export", imported.out().strip(), "--csv", "-")
                .out()
                .lines()
                .skip(1)
                .toList();
    }

    @Test
    void numbersReadingsByTheTimeSinceTheLast() {
        // at 10 Hz: jitter of 40 ms, two at once, a pause of half a second, one of 0.149 s
        long[] micros = {0, 140_000, 200_000, 200_000, 700_000, 849_000};
        Readings readings = new Readings(micros, true, new int[6], 0, Readings.LeftOut.NONE);

        long[] numbers = Import.numbers(readings, 10_000);

        assertArrayEquals(new long[] {0, 1, 2, 3, 8, 9}, numbers);
    }

    @Test
    void takesColumnsByNameAndKeepsTheIndicatorsResolution() throws IOException {
        Path readings = file(
                "named.csv",
                "note;force kgf;when\nx;10.5;2026-05-04T07:00:00.000Z\ny;11;2026-05-04T07:00:00.100Z\n"
                        + "z;12.25;2026-05-04T07:00:00.200Z\n");

        List<String> samples = samples(run(readings, "--time", "when", "--force", "force kgf", "--unit", "kgf"));

        // two decimals: one count is 0.01 kgf = 0.0980665 N
        assertEquals(
                List.of("1050", "1100", "1225"),
                samples.stream().map(row -> row.split(",")[4]).collect(Collectors.toList()));
        assertEquals(102.969825, Double.parseDouble(samples.get(0).split(",")[5]), 1e-9);
        assertTrue(samples.get(1).contains("2026-05-04T07:00:00.100000Z"), samples.get(1));
    }

    @Test
    void takesColumnsByNumberWithoutAHeaderAndLocalTimesWithTheirZone() throws IOException {
        Path readings = file(
                "plain.csv",
                "2026-05-04-07:00:00.000, 1, 100\n2026-05-04-07:00:00.250, 2, 110\n2026-05-04-07:00:00.500, 3, 90\n");

        List<String> samples =
                samples(run(readings, "--time", "1", "--force", "3", "--unit", "lbf", "--zone", "America/New_York"));

        assertEquals(3, samples.size());
        assertTrue(samples.get(0).contains("2026-05-04T11:00:00.000000Z"), samples.get(0));
        assertEquals(444.82216152605, Double.parseDouble(samples.get(0).split(",")[5]), 1e-9);
    }

    @Test
    void leavesTimesUnknownWhenOnlySecondsAreGiven() throws IOException {
        Path readings = file("seconds.csv", "0.0,2000\n0.5,2100\n1.0,2000\n1.5,2000\n2.0,0\n9,0\n");

        Desk imported = run(readings, "--time", "1", "--force", "2", "--unit", "N");
        JsonObject report = JsonParser.parseString(
                        Desk.run("report", imported.out().strip(), "--json").out())
                .getAsJsonObject();
        Desk text = Desk.run("report", imported.out().strip());

        JsonObject pull = report.getAsJsonArray("pulls").get(0).getAsJsonObject();
        assertTrue(pull.get("start").isJsonNull());
        assertEquals(2100, pull.get("peak_n").getAsDouble());
        assertTrue(report.getAsJsonObject("hours").get("shaft_h").isJsonNull());
        assertTrue(text.out().contains("No clock was known"), text.out());
        assertTrue(text.out().contains("imported"), text.out());
    }

    @Test
    void leavesOutLinesWithoutAReadingAndSaysHowMany() throws IOException {
        Path readings = file("holes.csv", "t,f\n0.0,10\n0.1,---\n0.2,12\n0.3,13\n0.4,\n0.5,14\n");

        Desk imported = run(readings, "--time", "t", "--force", "f", "--unit", "N", "--rate", "10");

        assertTrue(
                imported.err().contains("2 lines left out; the first, line 3: \"---\" is not a number."),
                imported.err());
        assertEquals(
                List.of("0", "2", "3", "5"),
                samples(imported).stream().map(row -> row.split(",")[1]).toList());
    }

    @Test
    void refusesReadingsWhoseTimeGoesBack() throws IOException {
        Path readings = file("back.csv", "1.0,10\n2.0,10\n1.5,10\n");

        Desk imported = run(readings, "--time", "1", "--force", "2", "--unit", "N");

        assertEquals(3, imported.code());
        assertTrue(imported.err().contains("back.csv:3: the time goes back by 0.500000 s"), imported.err());
    }

    @Test
    void namesTheColumnsWhenOneIsNotThere() throws IOException {
        Path readings = file("columns.csv", "time,pull\n0,1\n1,2\n");

        Desk imported = run(readings, "--time", "time", "--force", "force", "--unit", "N");

        assertEquals(2, imported.code());
        assertTrue(imported.err().contains("time | pull"), imported.err());
    }

    @Test
    void neverTouchesARecordingThatIsThere() throws IOException {
        Path readings = file("twice.csv", "2026-05-04T07:00:00Z,1\n2026-05-04T07:00:01Z,2\n");
        String[] how = {"--time", "1", "--force", "2", "--unit", "kN"};

        Desk first = run(readings, how);
        Desk second = run(readings, how);

        assertTrue(first.out().strip().endsWith("upper-landing_2026-05-04.tautlog"), first.out());
        assertTrue(second.out().strip().endsWith("upper-landing_2026-05-04_2.tautlog"), second.out());
    }

    /** A cell between two lines at 0° carries twice the tension; a column of forces is the tension already. */
    @Test
    void takesForcesAsTheLinesTensionWhereverTheCellSits() throws IOException {
        Path readings = file("fairlead.csv", "2026-05-04T07:00:00Z,1500\n2026-05-04T07:00:01Z,2000.5\n");
        String fairlead =
                SampleDay.rigToml().replace("at = \"line\"", "at = \"fairlead\"\nangle_between_lines_deg = 0");
        Path rig = file("fairlead.toml", fairlead);

        Desk imported = Desk.run(
                "import",
                readings,
                "--rig",
                rig,
                "-o",
                folder.resolve("out"),
                "--time",
                "1",
                "--force",
                "2",
                "--unit",
                "N");
        List<Double> forces = samples(imported).stream()
                .map(row -> Double.parseDouble(row.split(",")[5]))
                .toList();
        Desk whatIf = Desk.run("report", imported.out().strip(), "--rig", rig, "--json");

        assertEquals(List.of(1500.0, 2000.5), forces);
        assertEquals(0, whatIf.code(), whatIf.err());
        assertEquals(
                2000.5,
                JsonParser.parseString(Desk.run("report", imported.out().strip(), "--json")
                                .out())
                        .getAsJsonObject()
                        .getAsJsonArray("pulls")
                        .get(0)
                        .getAsJsonObject()
                        .get("peak_n")
                        .getAsDouble());
    }

    @Test
    void skipsAByteOrderMarkBeforeTheNames() throws IOException {
        Path readings = file("marked.csv", "\uFEFFtime,force\n0.0,10\n0.1,11\n0.2,12\n");

        assertEquals(
                3,
                samples(run(readings, "--time", "time", "--force", "force", "--unit", "N"))
                        .size());
    }

    @Test
    void namesTheRecordingAsTheLoggerDoes() throws IOException {
        Path readings = file("dated.csv", "2026-05-04T07:00:00Z,1\n2026-05-04T07:00:01Z,2\n");
        Path rig = file("upper-case.toml", SampleDay.rigToml().replace("upper-landing", "UPPER_Landing"));

        Desk dated = Desk.run(
                "import",
                readings,
                "--rig",
                rig,
                "-o",
                folder.resolve("out"),
                "--time",
                "1",
                "--force",
                "2",
                "--unit",
                "kN");

        assertTrue(dated.out().strip().endsWith("upper-landing_2026-05-04.tautlog"), dated.out() + dated.err());
    }

    @Test
    void saysOfOneReadingThatOneIsTooFew() throws IOException {
        Desk imported = run(file("one.csv", "t,f\n0.0,10\n"), "--time", "t", "--force", "f", "--unit", "N");

        assertEquals(3, imported.code());
        assertTrue(imported.err().contains("1 reading was found, two are needed: from one no rate"), imported.err());
        assertTrue(imported.err().contains("Give a table with two readings or more."), imported.err());
    }

    /** A comma for a decimal point makes a column more: {@code 17,5} is not 17. */
    @Test
    void leavesOutALineWithMoreColumnsThanTheFirst() throws IOException {
        Path readings = file("comma.csv", "t,f\n0.0,17,5\n0.1,17\n0.2,18,\n");

        Desk imported = run(readings, "--time", "t", "--force", "f", "--unit", "N", "--rate", "10");

        assertTrue(
                imported.err()
                        .contains(
                                "1 line left out; the first, line 2: it has 3 columns, the first line has 2 (a comma"),
                imported.err());
        assertEquals(2, samples(imported).size());
    }
}
