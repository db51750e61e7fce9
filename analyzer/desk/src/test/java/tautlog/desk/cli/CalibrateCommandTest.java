package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.FitQuality;
import tautlog.desk.fixtures.Desk;

/**
 * From a table to a calibration, through the command. Certified values: NIST/ITL Statistical Reference Datasets, linear
 * regression, {@code itl.nist.gov/div898/strd/lls/data/Pontius.shtml} and {@code Norris.shtml} (US government work), to 1e-9:
 * see ResponseFitTest.
 */
class CalibrateCommandTest {
    private static final double RELATIVE = 1e-9;

    @TempDir
    Path folder;

    /** A data set of NIST as a table of readings; its loads have no unit, newtons are as good as any. */
    private Path table(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(
                CalibrateCommandTest.class.getResourceAsStream("/tautlog/desk/calibration/" + name))) {
            String rows = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(row -> row.split(","))
                    .map(row -> row[1] + ",N," + row[0])
                    .collect(Collectors.joining("\n", "load,unit,counts\n", "\n"));
            return Files.writeString(folder.resolve(name), rows);
        }
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static JsonObject json(Object... arguments) {
        Object[] all = java.util.Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        Desk run = Desk.run(all);
        assertEquals(0, run.code(), run.err());
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static void certified(double value, com.google.gson.JsonElement found) {
        assertEquals(value, found.getAsDouble(), Math.abs(value) * RELATIVE);
    }

    @Test
    void fitsTheLoadCellOfPontiusToTheCertifiedDigitsAndTakesTheCurve() throws IOException {
        JsonObject found = json("calibrate", table("nist_pontius.csv"));

        assertEquals(1, found.get("schema").getAsInt());
        assertEquals(2, found.get("degree").getAsInt());
        JsonArray b = found.getAsJsonArray("coefficients");
        certified(0.673565789473684E-03, b.get(0));
        certified(0.732059160401003E-06, b.get(1));
        certified(-0.316081871345029E-14, b.get(2));
        JsonArray sd = found.getAsJsonArray("coefficient_sds");
        certified(0.107938612033077E-03, sd.get(0));
        certified(0.157817399981659E-09, sd.get(1));
        certified(0.486652849992036E-16, sd.get(2));
        certified(0.205177424076185E-03, found.get("residual_sd"));
        certified(0.999999900178537, found.get("r_squared"));
        assertEquals(37, found.get("degrees_of_freedom").getAsInt());
    }

    @Test
    void findsTheStraightLineThroughPontiusNotGoodEnoughThoughItsRSquaredIsNearOne() throws IOException {
        JsonObject found = json("calibrate", table("nist_pontius.csv"), "--degree", 1);

        assertEquals(1, found.get("degree").getAsInt());
        assertEquals(2, found.get("recommended_degree").getAsInt());
        assertTrue(found.get("r_squared").getAsDouble() > 0.9999);
        assertTrue(found.get("line_runs_probability").getAsDouble() < 0.001);
        // 0.00217127259605675 (exact rational arithmetic from the same data) / 0.205177424076185E-03 (certified)
        assertEquals(10.5824, found.get("line_to_curve_residual_sd_ratio").getAsDouble(), 1e-4);
        assertEquals(
                "line-not-good-enough",
                found.getAsJsonArray("cautions")
                        .get(0)
                        .getAsJsonObject()
                        .get("kind")
                        .getAsString());
    }

    @Test
    void fitsNorrisToTheCertifiedDigitsAndIsContentWithTheLine() throws IOException {
        JsonObject found = json("calibrate", table("nist_norris.csv"));

        assertEquals(1, found.get("degree").getAsInt());
        assertTrue(found.get("recommendation_settled").getAsBoolean());
        certified(-0.262323073774029, found.getAsJsonArray("coefficients").get(0));
        certified(1.00211681802045, found.getAsJsonArray("coefficients").get(1));
        certified(0.232818234301152, found.getAsJsonArray("coefficient_sds").get(0));
        certified(0.429796848199937E-03, found.getAsJsonArray("coefficient_sds").get(1));
        certified(0.884796396144373, found.get("residual_sd"));
        certified(0.999993745883712, found.get("r_squared"));
    }

    /** ASTM E74: 2.4 s; on Pontius 2.4 · 2.05177424076185e-4 in deflection, over B1 about 672.66 units of load. */
    @Test
    void givesTheLowerLimitFactorInCountsAndNewtons() throws IOException {
        JsonObject found = json("calibrate", table("nist_pontius.csv"));

        assertEquals(4.92425817783e-4, found.get("lower_limit_factor_counts").getAsDouble(), 1e-15);
        assertEquals(672.66, found.get("lower_limit_factor_n").getAsDouble(), 0.005);
    }

    @Test
    void writesAFileThatIsReadBackToTheLastDigit() throws Exception {
        for (String name : List.of("nist_pontius.csv", "nist_norris.csv")) {
            Path file = folder.resolve("calibration.toml");
            JsonObject found = json(
                    "calibrate",
                    table(name),
                    "-o",
                    file,
                    "--reference-percent",
                    "0.05",
                    "--at",
                    "2026-04-30T12:00:00Z",
                    "--shunt-step",
                    "61234.123456789012345");

            CellCalibration read = CellCalibration.parse("calibration.toml", Files.readString(file));

            FitQuality quality = read.quality().orElseThrow();
            JsonArray b = found.getAsJsonArray("coefficients");
            assertEquals(
                    b.get(0).getAsBigDecimal().stripTrailingZeros(),
                    read.response().zeroCounts().stripTrailingZeros());
            assertEquals(
                    BigDecimal.ONE.divide(b.get(1).getAsBigDecimal(), java.math.MathContext.DECIMAL128),
                    read.response().newtonsPerCount());
            assertEquals(found.get("degree").getAsInt() == 1, read.response().isStraight());
            assertEquals(found.get("degree").getAsInt(), quality.degree());
            assertEquals(found.get("residual_sd").getAsDouble(), quality.residualSdCounts());
            JsonArray covariance = found.getAsJsonArray("covariance");
            for (int i = 0; i < covariance.size(); i++) {
                assertEquals(
                        covariance.get(i).getAsDouble(), quality.covariance().get(i));
            }
            assertEquals(0.05, quality.referencePercent().orElseThrow());
            assertEquals(found.get("greatest_load_n").getAsDouble(), quality.greatestNewtons());
            assertEquals(
                    "2026-04-30T12:00:00Z", read.calibratedAt().orElseThrow().toString());
            assertEquals(
                    new BigDecimal("61234.123456789012345"),
                    read.shuntStepCounts().orElseThrow());
        }
    }

    @Test
    void tellsEveryProblemOfTheTableAndWritesNothing() throws IOException {
        Path file = folder.resolve("calibration.toml");

        Desk run = Desk.run("calibrate", write("bad.csv", "load,unit,counts\n1,kN,x\n2,,5\n"), "-o", file);

        assertEquals(2, run.code());
        assertTrue(run.err().contains("bad.csv:2: counts: \"x\" is not a number"), run.err());
        assertTrue(run.err().contains("bad.csv:3: unit: the unit is missing"), run.err());
        assertTrue(run.out().isEmpty());
        assertFalse(Files.exists(file));
    }

    @Test
    void refusesWhatCannotBeAsked() throws IOException {
        Path table = table("nist_norris.csv");

        assertEquals(2, Desk.run("calibrate", table, "--degree", "3").code());
        assertEquals(
                2, Desk.run("calibrate", table, "--reference-percent", "-1").code());
        assertEquals(2, Desk.run("calibrate", table, "--json", "-o", "-").code());
        assertEquals(
                2,
                Desk.run("calibrate", table, "-o", folder.resolve("day.tautlog"))
                        .code());
        assertEquals(2, Desk.run("calibrate", folder.resolve("nothing.csv")).code());
        assertEquals(
                2,
                Desk.run("calibrate", write("two.csv", "load,unit,counts\n0,N,0\n5,N,5\n5,N,6\n"), "--degree", 2)
                        .code());
    }

    @Test
    void saysThatNothingWasWrittenWithoutAFile() throws IOException {
        Desk run = Desk.run("calibrate", table("nist_norris.csv"));

        assertTrue(run.out().contains("The straight line is good enough"), run.out());
        assertTrue(
                run.out().replaceAll("\\s+", " ").contains("A static calibration does not prove dynamic accuracy"),
                run.out());
        assertTrue(run.err().contains("give -o calibration.toml"), run.err());
        assertTrue(
                run.out()
                        .lines()
                        .filter(line -> !line.contains(folder.toString()))
                        .allMatch(line -> line.length() <= 80),
                run.out());
    }

    @Test
    void writesAPageThatReferencesNothingOutsideItself() throws IOException {
        Path page = folder.resolve("calibration.html");

        Desk run = Desk.run("calibrate", table("nist_pontius.csv"), "--html", page);

        String html = Files.readString(page);
        assertEquals(0, run.code(), run.err());
        assertEquals(2, html.split("<svg ", -1).length - 1, "response and residuals; nothing is known of hysteresis");
        assertEquals(2 * 41, html.split("class=\"mark\"", -1).length - 1, "40 readings and a legend in each drawing");
        assertFalse(html.matches("(?s).*(src=|href=\"(?!#)|url\\(http|@import).*"));
        assertTrue(html.contains("A static calibration does not prove dynamic accuracy"));
    }

    /** The sample is what the command makes of the sample's readings; whoever changes one makes the other again. */
    @Test
    void sampleCalibrationIsMadeFromTheSampleReadings() throws Exception {
        Path samples = Path.of("..", "..", "samples");
        Path file = folder.resolve("calibration.toml");
        Path readings =
                Files.copy(samples.resolve("calibration-readings.csv"), folder.resolve("calibration-readings.csv"));

        Desk run = Desk.run(
                "calibrate", readings, "-o", file, "--reference-percent", "0.1", "--rig", samples.resolve("rig.toml"));

        assertEquals(0, run.code(), run.err());
        assertEquals(Files.readString(samples.resolve("calibration.toml")), Files.readString(file));
    }
}
