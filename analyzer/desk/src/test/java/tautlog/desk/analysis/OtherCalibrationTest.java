package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.Calibration;

/** {@code report --calibration}: old counts under a new calibration. */
class OtherCalibrationTest {
    /** Whole zeros, so that a zero found under one calibration has a whole shift under the other. */
    private static final String LINE = "b0_counts = 30.0\nb1_counts_per_newton = 0.8\n";

    private static final String CURVE = LINE + "b2_counts_per_newton2 = -4e-6\n";

    @TempDir
    Path first;

    @TempDir
    Path second;

    private Path toml;

    @BeforeEach
    void namesTheFile() {
        toml = first.resolve("calibration.toml");
    }

    /** A pull with two heavy moments, an overload under any of the calibrations, a snap out of the slack. */
    private static Consumer<ShortDay> day(int zeroCounts, boolean moved) {
        return day -> {
            day.hold(12, 30);
            if (moved) {
                day.zero(70 - zeroCounts);
            }
            day.hold(2, 70);
            day.hold(0.1, 2_500);
            day.hold(3, 6_000);
            day.hold(2, 14_500);
            day.hold(3, 5_000);
            day.hold(4, 70);
            day.hold(0.1, 9_000);
            day.hold(3, 4_000);
            day.hold(4, 60);
        };
    }

    private static JsonObject report(Object... arguments) {
        Object[] all = java.util.Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        Desk run = Desk.run(all);
        assertEquals(0, run.code(), run.err());
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    /** What depends on the file and not on the figures. */
    private static JsonObject figures(JsonObject report) {
        JsonObject copy = report.deepCopy();
        copy.remove("recordings");
        copy.remove("what_if");
        copy.getAsJsonObject("trust").remove("last_link");
        return copy;
    }

    @ParameterizedTest
    @ValueSource(strings = {LINE, CURVE})
    void readsOldCountsAsIfTheyHadBeenRecordedUnderIt(String text) throws Exception {
        for (boolean moved : new boolean[] {false, true}) {
            Files.writeString(toml, text);
            String name = "day-" + moved + ".tautlog";
            Path old = ShortDay.write(first, name, day(0, moved));
            Path under = ShortDay.write(second, name, CellCalibration.parse("calibration.toml", text), day(30, moved));

            JsonObject again = report("report", old, "--calibration", toml);
            JsonObject day = report("report", under);

            assertEquals(figures(day), figures(again));
            assertFalse(day.getAsJsonArray("overloads").isEmpty(), "the day must tell something");
            assertFalse(day.getAsJsonArray("shocks").isEmpty(), "the day must tell something");
            assertTrue(day.getAsJsonArray("what_if").isEmpty());
            assertFalse(figures(report("report", old)).equals(figures(day)), "the calibrations must differ");
            Files.delete(old);
            Files.delete(under);
        }
    }

    @Test
    void saysWhatIfOnEveryPage() throws IOException {
        Files.writeString(toml, LINE + "calibrated_at = 2026-04-30T12:00:00Z\n");
        Path old = ShortDay.write(first, "day.tautlog", day(0, false));
        Path page = first.resolve("day.html");

        Desk run = Desk.run("report", old, "--calibration", toml, "--html", page);

        String sentence = "Another calibration of the load cell is used than the one stored in the recording, made from"
                + " readings of 2026-04-30.";
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("WHAT IF"), run.out());
        assertTrue(Files.readString(page).contains(sentence));
        assertTrue(Files.readString(page).contains("The load cell was calibrated on 30 April 2026."));
        assertTrue(report("report", old, "--calibration", toml)
                .getAsJsonArray("what_if")
                .toString()
                .contains(sentence));
    }

    @Test
    void sameCalibrationIsNoWhatIf() throws IOException {
        Files.writeString(
                toml, CellCalibration.written(Calibration.of("0.0", "1.00")).toml());
        Path old = ShortDay.write(first, "day.tautlog", day(0, false));

        assertTrue(report("report", old, "--calibration", toml)
                .getAsJsonArray("what_if")
                .isEmpty());
    }

    @Test
    void tellsEveryProblemOfTheFileAndThatThereIsNone() throws IOException {
        Files.writeString(toml, "b0_counts = \"x\"\nb1_counts_per_newton = -1.0\n");
        Path old = ShortDay.write(first, "day.tautlog", day(0, false));

        Desk bad = Desk.run("report", old, "--calibration", toml);
        Desk none = Desk.run("report", old, "--calibration", first.resolve("none.toml"));

        assertEquals(2, bad.code());
        assertTrue(bad.err().contains("calibration.toml:1: b0_counts"), bad.err());
        assertTrue(bad.err().contains("calibration.toml:2: b1_counts_per_newton"), bad.err());
        assertEquals(2, none.code());
        assertTrue(none.err().contains("there is no file"), none.err());
    }
}
