package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;

/**
 * 10 kN held for three seconds from second 13 on, with what the switches said. Drum of the example rig: 0.0955 m on the first of four
 * layers, 0.1285 m on the last, ratio 14, efficiency 0.75.
 */
class DrivelineLoadTest {
    private static final String AT = "2026-05-04T07:00:14Z";
    private static final int CLUTCH = 2;

    @TempDir
    Path folder;

    private Path day(Consumer<ShortDay> before) throws Exception {
        return ShortDay.write(folder, "day.tautlog", Cases.known(), day -> {
            day.hold(12, 0);
            before.accept(day);
            day.hold(1, 0);
            day.hold(3, 10_000);
            day.hold(40, 0);
        });
    }

    private static JsonObject driveline(Path recording) {
        return Cases.json(recording, AT).getAsJsonObject("outing").getAsJsonObject("driveline");
    }

    private static String words(Path recording) {
        return Desk.run("incident", recording, "--at", AT, "--zone", "UTC")
                .out()
                .replaceAll("\\s+", " ");
    }

    @Test
    void givesAnIntervalOverTheLayersWithTheClutchEngaged() throws Exception {
        Path recording = day(day -> day.input(CLUTCH, CLUTCH));

        JsonObject driveline = driveline(recording);

        assertTrue(driveline.get("clutch").getAsBoolean());
        assertEquals(10_000 * 0.0955 / 10.5, driveline.get("torque_low_nm").getAsDouble(), 1);
        assertEquals(10_000 * 0.1285 / 10.5, driveline.get("torque_high_nm").getAsDouble(), 1);
        assertTrue(words(recording).contains("Torque at the shaft: 90 to 123 N·m; rated 1120 N·m."), words(recording));
    }

    @Test
    void saysAtMostWhenTheClutchIsNotKnown() throws Exception {
        Path recording = day(day -> {});

        assertTrue(driveline(recording).get("clutch").isJsonNull());
        assertTrue(driveline(recording).get("torque_is_at_most").getAsBoolean());
        assertTrue(words(recording).contains("at most 123 N·m"), words(recording));
    }

    @Test
    void saysWhatItWouldHaveBeenWhenTheClutchWasOut() throws Exception {
        Path recording = day(day -> day.input(CLUTCH, 0));

        assertTrue(words(recording).contains("The clutch was said not to be engaged"), words(recording));
    }

    @Test
    void leavesSpeedAndPowerUnknownWithoutAShaftReading() throws Exception {
        Path recording = day(day -> {});

        assertTrue(driveline(recording).get("shaft_rpm").isJsonNull());
        assertTrue(driveline(recording).get("power_high_kw").isJsonNull());
        assertTrue(words(recording).contains("Power: not known."), words(recording));
    }

    @Test
    void tellsTheInstrumentsTemperatureOfTheTime() throws Exception {
        Path recording = day(day -> day.health(12_400, -35));

        assertTrue(words(recording).contains("board was at -3.5 °C, its supply at 12.40 V"), words(recording));
    }

    @Test
    void saysThatNothingMeasuredBrokeALimitAndStillAsksForAnInspection() throws Exception {
        String words = words(day(day -> {}));

        assertTrue(words.contains("Nothing that was measured broke a limit"), words);
        assertTrue(words.contains("Inspect the gear that was in the line before the next pull"), words);
    }
}
