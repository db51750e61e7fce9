package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;

/** A recording under a calibration that bends: counts = b0 + b1·F + b2·F². */
class CurveTest {
    /** Two counts a newton at zero; at 40 kN the response is 1.2 % above the straight line. */
    private static final double B0 = 400;

    private static final double B1 = 2;
    private static final double B2 = 6e-7;

    @TempDir
    Path folder;

    private static int counts(double newtons) {
        return (int) Math.round(B0 + B1 * newtons + B2 * newtons * newtons);
    }

    private Path day(double b2) throws IOException {
        Path file = folder.resolve("curve.tautlog");
        try (RecordingWriter recording = RecordingWriter.open(file, "curve")) {
            CellCalibration calibration = CellCalibration.parse(
                    "calibration.toml",
                    "schema = 1\nb0_counts = " + B0 + "\nb1_counts_per_newton = " + B1 + "\nb2_counts_per_newton2 = "
                            + b2 + "\n");
            ShortDay.append(recording, 7, 0, SampleDay.rigToml(), calibration, day -> {
                day.hold(1, counts(0));
                day.hold(2, counts(4_000));
                day.hold(0.1, counts(36_000));
                day.hold(2, counts(4_000));
                day.hold(4, counts(0));
            });
        } catch (ConfigException e) {
            throw new IllegalStateException(e);
        }
        return file;
    }

    /** The forces that went in come out, to one count (half a newton); a straight line would say 36,389 N. */
    @Test
    void peakMeanRiseAndImpulseAreThoseOfTheFormula() throws IOException {
        // when
        Desk result = Desk.run("report", day(B2), "--json");
        assertEquals("", result.err());
        JsonObject report = JsonParser.parseString(result.out()).getAsJsonObject();

        // then 4.1 s, 0.1 s of it at 36 kN
        JsonObject pull = report.getAsJsonArray("pulls").get(0).getAsJsonObject();
        assertEquals(36_000, pull.get("peak_n").getAsDouble(), 0.5);
        double mean = (4.0 * 4_000 + 0.1 * 36_000) / 4.1;
        // two levels 32 kN apart, few samples at the upper: third order is 2κ² · 0.024 · 3e13 = 0.14 N
        assertEquals(mean, pull.get("mean_n").getAsDouble(), 0.7);
        assertEquals(mean * 4.1, pull.get("impulse_ns").getAsDouble(), 3);
        JsonObject jolt = report.getAsJsonArray("jolts").get(0).getAsJsonObject();
        assertEquals(32_000, jolt.get("rise_n").getAsDouble(), 1);
    }

    /** Second 3: 50 samples of 36 kN, 450 of 4 kN. Without the squares it would be 27 N off; third order is 0.4 N. */
    @Test
    void secondsOfTheExportHaveTheMeanOfTheTensions() throws IOException {
        List<String> rows = Desk.run("export", "--csv", "-", "--seconds", day(B2))
                .out()
                .lines()
                .toList();

        int mean = List.of(rows.get(0).split(",", -1)).indexOf("mean_n");
        assertEquals(7_200, Double.parseDouble(rows.get(4).split(",", -1)[mean]), 1);
    }

    /** The example rig's cell may carry 60 kN; −6e-5 counts per newton² have their top at 2²/(4 · 6e-5) = 16,667 counts above zero. */
    @Test
    void aCurveWithItsTopWithinTheConvertersRangeIsRefused() throws IOException {
        Desk result = Desk.run("report", day(-6e-5), "--json");

        assertEquals(3, result.code(), result.err());
        assertTrue(result.err().contains("stops rising at 17067 counts"), result.err());
    }

    @Test
    void anOutingUnderSuchACurveIsLeftOutAndNamedOnce() throws IOException {
        day(-6e-5);
        Path whole = ShortDay.write(folder, "whole.tautlog", day -> day.hold(3, 3_000));
        for (String command : List.of("report", "export --csv -")) {
            List<Object> args = new java.util.ArrayList<>(List.of(command.split(" ")));
            args.addAll(List.of(folder.resolve("curve.tautlog"), whole));

            Desk result = Desk.run(args.toArray());

            assertEquals(3, result.code(), result.err());
            assertTrue(
                    result.err()
                            .startsWith("left out: outing 1 of curve.tautlog (about 5050 samples), because the"
                                    + " calibration's curve stops rising"),
                    result.err());
        }
    }
}
