package tautlog.desk.importing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;

/**
 * A real line-tension log by others, 2.9 readings a second with pauses, beside what an independent program published of it:
 * 15 hauls with their greatest force. The log lies beside the project's folder ({@code ../shared/data}) and is not part of
 * it; without it these tests are skipped.
 *
 * <p>The published hauls are runs of readings of 40 lbf or more, parted by pauses of 30 s. Our pulls close below half of
 * {@code pull_from}, and this indicator shows 28 lbf on a slack line; so the rig here sets {@code pull_from} to 60 lbf, half
 * of which lies just above that.
 */
class RealHaulTest {
    private static final double NEWTONS_PER_LBF = 4.4482216152605;
    private static final ZoneId ZONE = ZoneId.of("America/New_York");
    private static final DateTimeFormatter PUBLISHED = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");
    private static final String RIG = """
            schema = 1
            units = "lbf"
            [winch]
            name = "line-hauler"
            rated_pull = "6000 lbf"
            [[gear]]
            id = "line"
            kind = "rope"
            wll = "5000 lbf"
            [[hookup]]
            id = "straight"
            items = [ { gear = "line" } ]
            [detect]
            pull_from = "60 lbf"
            slack_below = "40 lbf"
            """;

    @TempDir
    static Path folder;

    private static List<Haul> hauls = List.of();
    private static List<Reading> readings = List.of();
    private static JsonObject report = new JsonObject();
    private static String text = "";

    /** A published haul; both seconds included. */
    private record Haul(Instant start, Instant end, long greatestLbf) {
        boolean holds(Instant at) {
            return !at.isBefore(start) && at.isBefore(end.plusSeconds(1));
        }
    }

    /** A reading as our recording gives it back. */
    private record Reading(Instant at, long lbf) {}

    @BeforeAll
    static void importsTheLog() throws IOException {
        Path data = Path.of(System.getProperty("tautlog.root", ".")).resolveSibling("shared/data");
        Path log = data.resolve("line-haul-2018-11-15.csv.gz");
        assumeTrue(
                Files.exists(log),
                "needs the real line-tension log " + log.getFileName()
                        + " in ../shared/data beside the project, which is not"
                        + " there: it is by others and no part of the project");
        hauls = Files.readAllLines(data.resolve("line-haul-2018-11-15-hauls.csv")).stream()
                .skip(1)
                .map(RealHaulTest::haul)
                .toList();
        Path rig = Files.writeString(folder.resolve("hauler.toml"), RIG);
        Desk imported = Desk.run(
                "import", log, "--rig", rig, "-o", folder, "--time", "1", "--force", "3", "--unit", "lbf", "--zone",
                ZONE);
        assertEquals(0, imported.code(), imported.err());
        String recording = imported.out().strip();
        report = JsonParser.parseString(Desk.run("report", recording, "--json").out())
                .getAsJsonObject();
        text = Desk.run("report", recording, "--zone", ZONE).out();
        readings = Desk.run("export", recording, "--csv", "-")
                .out()
                .lines()
                .skip(1)
                .map(RealHaulTest::reading)
                .toList();
    }

    private static Haul haul(String line) {
        String[] cells = line.split(",");
        return new Haul(published(cells[1]), published(cells[2]), Long.parseLong(cells[4]));
    }

    private static Instant published(String local) {
        return LocalDateTime.parse(local, PUBLISHED).atZone(ZONE).toInstant();
    }

    private static Reading reading(String row) {
        String[] cells = row.split(",");
        return new Reading(Instant.parse(cells[3]), Math.round(Double.parseDouble(cells[5]) / NEWTONS_PER_LBF));
    }

    private static Instant time(JsonElement entry, String key) {
        return Instant.parse(entry.getAsJsonObject().get(key).getAsString());
    }

    @Test
    void keepsEveryReading() {
        assertEquals(26_556, readings.size());
    }

    @Test
    void theGreatestForceOfEveryPublishedHaulIsReproducedToThePound() {
        assertEquals(15, hauls.size());
        for (Haul haul : hauls) {
            long greatest = readings.stream()
                    .filter(reading -> haul.holds(reading.at()))
                    .mapToLong(Reading::lbf)
                    .max()
                    .orElse(-1);
            assertEquals(haul.greatestLbf(), greatest, haul.toString());
        }
    }

    @Test
    void aPullInEveryPublishedHaulHasItsGreatestForce() {
        for (Haul haul : hauls) {
            double greatest = 0;
            for (JsonElement pull : report.getAsJsonArray("pulls")) {
                if (haul.holds(time(pull, "start"))) {
                    greatest = Math.max(
                            greatest, pull.getAsJsonObject().get("peak_n").getAsDouble());
                }
            }
            assertEquals(haul.greatestLbf(), greatest / NEWTONS_PER_LBF, 1e-6, haul.toString());
        }
    }

    @Test
    void noPullOfThirtySecondsLiesOutsideThePublishedHauls() {
        List<String> outside = new ArrayList<>();
        int longPulls = 0;
        for (JsonElement pull : report.getAsJsonArray("pulls")) {
            if (pull.getAsJsonObject().get("duration_s").getAsDouble() >= 30) {
                longPulls++;
                boolean inside = hauls.stream()
                        .anyMatch(haul -> haul.holds(time(pull, "start")) && haul.holds(time(pull, "end")));
                if (!inside) {
                    outside.add(pull.toString());
                }
            }
        }
        assertEquals(List.of(), outside);
        assertTrue(longPulls >= 10, "only " + longPulls + " long pulls");
    }

    @Test
    void thePauseOfHalfAnHourIsAGap() {
        boolean found = false;
        for (JsonElement trouble : report.getAsJsonArray("trouble")) {
            double minutes = (time(trouble, "end").getEpochSecond()
                            - time(trouble, "start").getEpochSecond())
                    / 60.0;
            found |= trouble.getAsJsonObject().get("kind").getAsString().equals("gap") && Math.abs(minutes - 30) < 0.1;
        }
        assertTrue(found);
    }

    @Test
    void theReportSaysThatThisInstrumentIsTooSlowForShocks() {
        assertTrue(text.replaceAll("\\s+", " ").contains("this instrument is too slow for shocks"), text);
        for (JsonElement shock : report.getAsJsonArray("shocks")) {
            assertEquals(false, shock.getAsJsonObject().get("resolved").getAsBoolean());
        }
    }
}
