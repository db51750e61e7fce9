package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.live.LiveReadings;
import tautlog.logger.run.LoggerRun.Until;

/**
 * A zero that moves while a logger records. {@link StoredOuting} replays as the desk does and compares every finding and second
 * with what was said live. 5,000 counts are 50 N, 10 s are 5,000 samples.
 */
@Timeout(60)
class MovingZeroTest {
    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);

    @Test
    void followsTheSlackLineAndLeavesTheCountsAsTheyCame() throws Exception {
        // given a haul of 8 s, a cell that reads 50 N more from then on, another haul
        instrument.haul().hold(5_000, 11_000).haul().hold(5_000, 10_000);

        // when
        LiveReadings shown = record("follow");

        // then
        StoredOuting outing = stored();
        assertEquals("zero 10000 5000 SLACK", outing.of("zero").get(0));
        assertEquals(instrument.sent(), outing.counts());
        assertTrue(shown.zero().proven());
        assertEquals(50, shown.zero().movedNewtons(), 0.011);
        assertEquals(0, shown.tensionNewtons().orElseThrow(), 0.1);
        // then the second haul's snap to 25 kN is 24.95 kN with the zero of the day
        List<Integer> peaks = outing.said().stream()
                .filter(Finding.Pull.class::isInstance)
                .map(finding -> ((Finding.Pull) finding).peak())
                .toList();
        assertEquals(2, peaks.size());
        assertEquals(-5_000, peaks.get(1) - peaks.get(0), 16);
    }

    @Test
    void leavesAFixedZeroWhereItIs() throws Exception {
        instrument.haul().hold(5_000, 11_000);

        LiveReadings shown = record("fixed");

        assertEquals(List.of(), stored().of("zero"));
        assertTrue(shown.zero().proven());
        assertEquals(0, shown.zero().movedNewtons());
        assertEquals(50, shown.tensionNewtons().orElseThrow(), 0.1);
    }

    @Test
    void saysThatTheZeroIsUnprovenWhileNothingWasPulled() throws Exception {
        instrument.hold(5_000, 12_000);

        LiveReadings shown = record("follow");

        assertEquals(List.of(), stored().of("zero"));
        assertFalse(shown.zero().proven());
    }

    @Test
    void takesTheWordOfWhoHoldsTheMarkButtonForThreeSeconds() throws Exception {
        // given a short press, then one of 3 s, before anything was pulled
        instrument.button(false).hold(5_000, 500).button(true).hold(5_000, 500).button(false);
        instrument.hold(5_000, 500).button(true).hold(5_000, 2_000).button(false);

        LiveReadings shown = record("follow");

        assertEquals(List.of("zero 3000 5000 BUTTON"), stored().of("zero"));
        assertEquals(List.of("mark 500 ", "mark 1500 "), stored().of("mark"));
        assertTrue(shown.zero().proven());
    }

    @Test
    void takesNoWordOfItWhereTheZeroIsFixed() throws Exception {
        instrument.button(false).hold(5_000, 500).button(true).hold(5_000, 2_000);

        record("fixed");

        assertEquals(List.of(), stored().of("zero"));
    }

    private LiveReadings record(String zero) throws Exception {
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        Files.writeString(folder.config(), "zero = \"" + zero + "\"\n", java.nio.file.StandardOpenOption.APPEND);
        ScriptedPort port = new ScriptedPort().bring(instrument.take()).hangUp();
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test");
        logger.run();
        return logger.status().outing().orElseThrow();
    }

    private StoredOuting stored() throws IOException {
        return StoredOuting.readAll(StoredOuting.only(path.resolve("recordings")))
                .get(0);
    }
}
