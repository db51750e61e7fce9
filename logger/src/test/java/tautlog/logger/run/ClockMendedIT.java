package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.config.Installation;
import tautlog.logger.endtoend.BothPrograms;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.run.LoggerRun.Until;

/** What the desk's report says of an hour that was recorded before the board knew the time, and of a clock that stood wrong. */
@Timeout(120)
class ClockMendedIT {
    private static final Instant SET = Instant.parse("2026-05-04T00:30:00Z");
    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            port = "scripted"
            [calibration]
            zero_counts = 0.0
            newtons_per_count = 0.01
            """;

    private final ScriptedPort port = new ScriptedPort();
    private final SmallInstrument instrument = new SmallInstrument(7);

    @Test
    void reportsTheHourBeforeTheClockWasSetAtItsTrueTime() throws Exception {
        reports("clock-unset", Instant.parse("1970-01-01T00:00:40Z"));
    }

    @Test
    void reportsWhatWasRecordedUnderAClockTwoDaysAheadAtItsTrueTime() throws Exception {
        reports("clock-ahead", SET.plus(Duration.ofHours(47)));
    }

    /** A haul with an overload, an hour of the instrument's counter, then the clock is set to {@link #SET}. */
    private void reports(String name, Instant wrong) throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of(name), LoggerFolder.RIG, LOGGER);
        AtomicReference<Instant> now = new AtomicReference<>(wrong);
        LoggerRun logger = new LoggerRun(
                Installation.load(programs.folder().resolve("logger.toml")),
                port,
                Until.CLOSED,
                "tautlogd test",
                new Board(now::get, () -> Optional.of(8L << 30), DayFiles::new));
        Thread run = start(logger);
        instrument.haul();
        for (int quarter = 0; quarter < 4; quarter++) {
            instrument.pause(898).hold(0, 1_000);
        }
        port.bring(instrument.take());
        await(logger, instrument.sent().size());
        Duration counted = Duration.ofSeconds(Math.round(instrument.seconds()));

        // when
        now.set(SET);
        port.bring(instrument.hold(0, 500).take());
        await(logger, instrument.sent().size());
        port.hangUp();
        run.join();
        JsonObject report = programs.report();

        // then: the overload is told at the sample that first reached the limit, 20 kN, a day before the file was
        // closed
        int first = 0;
        while (instrument.sent().get(first) < 2_000_000) {
            first++;
        }
        Instant expected = SET.minus(counted).plusMillis(2L * first);
        JsonObject overload = report.getAsJsonArray("overloads").get(0).getAsJsonObject();
        assertNear(expected, overload.get("start").getAsString());
        JsonObject recording = report.getAsJsonArray("recordings").get(0).getAsJsonObject();
        assertNear(SET.minus(counted), recording.get("start").getAsString());
        assertTrue(
                recording.get("file").getAsString().endsWith("upper-landing_2026-05-03.tautlog"), recording::toString);
    }

    /** To a sample. */
    private static void assertNear(Instant expected, String told) {
        Duration off = Duration.between(expected, Instant.parse(told)).abs();
        assertTrue(off.compareTo(Duration.ofMillis(2)) <= 0, () -> told + " instead of " + expected);
    }

    private static Thread start(LoggerRun logger) {
        Thread thread = new Thread(() -> {
            try {
                logger.run();
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        thread.start();
        return thread;
    }

    private static void await(LoggerRun logger, int samples) throws InterruptedException {
        long end = System.nanoTime() + 20_000_000_000L;
        while (logger.status().outing().filter(o -> o.samples() == samples).isEmpty()) {
            assertTrue(System.nanoTime() < end, "waited in vain");
            Thread.sleep(10);
        }
        assertEquals(Optional.empty(), logger.bug());
    }
}
