package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.control.Status;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.run.LoggerRun.Until;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;

/** A board whose clock does not know the time, and one whose disk is nearly full. */
@Timeout(60)
class BoardTest {
    /** Where a board without a battery for its clock starts. */
    private static final Instant UNSET = Instant.parse("1970-01-01T00:00:40Z");

    private static final FreeSpace PLENTY = () -> Optional.of(8L << 30);

    @TempDir
    Path path;

    private final ScriptedPort port = new ScriptedPort();
    private final SmallInstrument instrument = new SmallInstrument(7);
    private final AtomicReference<Instant> now = new AtomicReference<>(UNSET);
    private final InstantSource clock = now::get;

    @Test
    void namesARecordingUndatedWhileNoClockIsKnownAndByItsDayWhenItIsClosed() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        LoggerRun logger = logger(folder, PLENTY);
        Thread thread = begin(logger);
        port.bring(instrument.hold(0, 500).take());
        await(() -> logger.recording().isPresent());

        // then
        assertEquals("upper-landing_undated-1.tautlog", name(logger.recording().orElseThrow()));

        // when: the clock is set while the outing goes on, 1 s after its first sample by the instrument's ticks
        now.set(Instant.parse("2026-05-04T00:00:00.500Z"));
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == 1_000);
        port.hangUp();
        thread.join();

        // then: its first sample lies before midnight, and that day's name it gets
        Path file = StoredOuting.only(folder.recordings());
        assertEquals("upper-landing_2026-05-03.tautlog", name(file.toString()));
        assertEquals(instrument.sent(), StoredOuting.readAll(file).get(0).counts());
        assertEquals(Optional.of(file.toString()), logger.recording(), "what is said at the end is where it is");
    }

    @Test
    void keepsTheUndatedNameWhenNoClockWasEverKnown() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        port.bring(instrument.hold(0, 500).take()).hangUp();

        // when
        logger(folder, PLENTY).run();

        // then
        assertEquals(
                "upper-landing_undated-1.tautlog",
                name(StoredOuting.only(folder.recordings()).toString()));
    }

    @Test
    void datesAnUndatedRecordingThatAPowerCutLeftAtTheNextStart() throws Exception {
        // given: begun without a clock, which was set later, then cut off
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        Files.createDirectories(folder.recordings());
        Path undated = folder.recordings().resolve("upper-landing_undated-1.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(undated, "upper-landing")) {
            OutingWriter cut = writer.begin(new OutingStart(
                    instrument.instrument(),
                    LoggerFolder.RIG,
                    folder.installation().cellCalibration(),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            cut.tension(0, 1_000_000, 0, new int[25], 0, 25);
            cut.clock(1_000_000, 1_777_878_000_000_000L); // 2026-05-04T07:00:00Z
            cut.commit();
        }

        // when: the next day
        now.set(Instant.parse("2026-05-05T07:00:00Z"));
        port.bring(new SmallInstrument(8).hold(0, 500).take()).hangUp();
        logger(folder, PLENTY).run();

        // then
        assertTrue(Files.notExists(undated));
        assertEquals(
                25,
                StoredOuting.readAll(folder.recordings().resolve("upper-landing_2026-05-04.tautlog"))
                        .get(0)
                        .outing()
                        .samples());
        assertTrue(Files.exists(folder.recordings().resolve("upper-landing_2026-05-05.tautlog")));
    }

    @Test
    void saysOnBeaconAndStatusThatTheDiskIsNearlyFullAndRecordsOn() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        LoggerRun logger = logger(folder, () -> Optional.of(DiskReserve.BYTES - 1));
        Thread thread = begin(logger);
        port.bring(instrument.hold(0, 500).take());
        await(() -> logger.status().disk().lastLink().isPresent());

        // when
        Status status = logger.status();
        port.hangUp();
        thread.join();

        // then
        assertEquals("fault", status.beacon());
        assertTrue(status.disk().low());
        assertEquals(Optional.of(DiskReserve.BYTES - 1), status.disk().freeBytes());
        assertEquals(
                instrument.sent(),
                StoredOuting.readAll(StoredOuting.only(folder.recordings()))
                        .get(0)
                        .counts());
    }

    private LoggerRun logger(LoggerFolder folder, FreeSpace space) throws Exception {
        return new LoggerRun(
                folder.installation(), port, Until.CLOSED, "tautlogd test", new Board(clock, space, DayFiles::new));
    }

    private static Thread begin(LoggerRun logger) {
        Thread thread = new Thread(() -> {
            try {
                logger.run();
            } catch (java.io.IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        thread.start();
        return thread;
    }

    private static long samples(LoggerRun logger) {
        return logger.status().outing().map(outing -> outing.samples()).orElse(0L);
    }

    private static String name(String file) {
        return Path.of(file).getFileName().toString();
    }

    private static void await(BooleanSupplier isSo) throws InterruptedException {
        long end = System.nanoTime() + 10_000_000_000L;
        while (!isSo.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "waited in vain");
            Thread.sleep(10);
        }
    }
}
