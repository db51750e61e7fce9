package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.control.Status;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.run.LoggerRun.Until;
import tautlog.recording.Outing;
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
    void closesTheRecordingInOrderThoughNobodyCouldLookAtTheDisk() throws Exception {
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        port.bring(instrument.hold(0, 500).take());
        LoggerRun logger = logger(folder, () -> {
            throw new OutOfMemoryError("of the test");
        });
        Thread thread = begin(logger);
        await(() -> logger.recording().isPresent());
        port.bring(instrument.hold(0, 500).take());
        port.hangUp();
        thread.join();

        assertTrue(logger.awaitFinished(1));
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(instrument.sent(), outing.counts());
        assertTrue(outing.outing().ended());
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
    void datesTheWholeHourThatWasRecordedBeforeTheClockWasSet() throws Exception {
        // given: an hour by the instrument's counter, on a board that stands in 1970
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        LoggerRun logger = logger(folder, PLENTY);
        Thread thread = begin(logger);
        instrument.haul();
        for (int quarter = 0; quarter < 4; quarter++) {
            instrument.pause(898).hold(0, 1_000);
        }
        port.bring(instrument.take());
        await(() -> samples(logger) == instrument.sent().size());
        assertEquals(
                Optional.of(BoardClock.State.UNSET), logger.status().clock().state());
        double hour = instrument.seconds();

        // when
        Instant set = Instant.parse("2026-05-04T00:30:00Z");
        now.set(set);
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == instrument.sent().size());
        port.hangUp();
        thread.join();

        // then: to the microsecond, because the clock was read when the HELLO came
        Path file = StoredOuting.only(folder.recordings());
        assertEquals("upper-landing_2026-05-03.tautlog", name(file.toString()));
        StoredOuting stored = StoredOuting.readAll(file).get(0);
        assertEquals(instrument.sent(), stored.counts());
        assertEquals(3_608, hour);
        long firstTick = stored.outing().firstTick();
        assertEquals(
                ChronoUnit.MICROS.between(Instant.EPOCH, set.minusSeconds(3_608)),
                stored.outing().utcMicros(firstTick).orElseThrow());
        assertEquals(1, stored.of("clock").size(), "nothing was told of 1970");
        assertEquals(
                List.of("overload"),
                stored.said().stream()
                        .map(Finding::kind)
                        .filter("overload"::equals)
                        .toList());
    }

    @Test
    void namesByItsTrueDayWhatWasBegunUnderAWrongOne() throws Exception {
        // given: 2 h ahead, beyond midnight; of the true day there is a recording already
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        cutOff(folder, "upper-landing_2026-05-04.tautlog", "2026-05-04T07:00:00Z");
        now.set(Instant.parse("2026-05-05T01:00:00Z"));
        LoggerRun logger = logger(folder, PLENTY);
        Thread thread = begin(logger);
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == 500 && logger.recording().isPresent());
        assertEquals("upper-landing_2026-05-05.tautlog", name(logger.recording().orElseThrow()));

        // when: stepped back across midnight
        now.set(Instant.parse("2026-05-04T23:00:00Z"));
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == 1_000);
        port.hangUp();
        thread.join();

        // then
        Path file = folder.recordings().resolve("upper-landing_2026-05-04_2.tautlog");
        assertEquals(Optional.of(file.toString()), logger.recording());
        Outing outing = StoredOuting.readAll(file).get(0).outing();
        assertEquals(
                ChronoUnit.MICROS.between(Instant.EPOCH, Instant.parse("2026-05-04T22:59:59Z")),
                outing.utcMicros(outing.firstTick()).orElseThrow());
        assertTrue(Files.notExists(folder.recordings().resolve("upper-landing_2026-05-05.tautlog")));
    }

    @Test
    void namesWhatAPowerCutLeftUnderAWrongDayOrWithoutItsName() throws Exception {
        // given: one cut off after its clock was mended, one closed whose renaming was cut off
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        cutOff(folder, "upper-landing_2026-06-09.tautlog", "2026-06-09T07:00:00Z", "2026-05-03T07:00:00Z");
        try (RecordingWriter writer = RecordingWriter.open(
                cutOff(folder, "upper-landing_undated-4.tautlog", "2026-05-04T07:00:00Z"), "upper-landing")) {
            for (Outing outing : writer.interrupted()) {
                OutingWriter rest = writer.resume(outing);
                rest.end();
                rest.commit();
            }
        }

        // when
        now.set(Instant.parse("2026-05-05T07:00:00Z"));
        port.bring(new SmallInstrument(8).hold(0, 500).take()).hangUp();
        logger(folder, PLENTY).run();

        // then
        assertEquals(
                List.of(
                        "upper-landing_2026-05-03.tautlog",
                        "upper-landing_2026-05-04.tautlog",
                        "upper-landing_2026-05-05.tautlog"),
                recordings(folder));
    }

    @Test
    void doesNotBelieveAClockThatStandsWhereTheBoardWasTurnedOff() throws Exception {
        // given: a board that restores its clock as it was somewhere before the end of the last recording
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        cutOff(folder, "upper-landing_2026-05-04.tautlog", "2026-05-04T15:00:00Z");
        now.set(Instant.parse("2026-05-04T14:17:01Z"));
        LoggerRun logger = logger(folder, PLENTY);
        Thread thread = begin(logger);
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == 500 && logger.recording().isPresent());

        // then
        assertEquals("upper-landing_undated-1.tautlog", name(logger.recording().orElseThrow()));
        assertEquals(
                Optional.of(BoardClock.State.BEHIND_RECORDINGS),
                logger.status().clock().state());

        // when
        now.set(Instant.parse("2026-05-05T08:00:00Z"));
        port.bring(instrument.hold(0, 500).take());
        await(() -> samples(logger) == 1_000);
        port.hangUp();
        thread.join();

        // then
        assertEquals(
                List.of("upper-landing_2026-05-04.tautlog", "upper-landing_2026-05-05.tautlog"), recordings(folder));
    }

    @Test
    void namesAnUndatedRecordingByTheFirstOutingThatGotATime() throws Exception {
        // given: an outing that never does, then one of another start of the instrument that does
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        LoggerRun logger = logger(folder, PLENTY);
        Thread thread = begin(logger);
        SmallInstrument restarted = new SmallInstrument(8);
        port.bring(instrument.hold(0, 500).take()).bring(restarted.hold(0, 500).take());
        await(() -> port.isTaken() && samples(logger) == 500);

        // when
        now.set(Instant.parse("2026-05-06T08:00:00Z"));
        port.bring(restarted.hold(0, 500).take());
        await(() -> samples(logger) == 1_000);
        port.hangUp();
        thread.join();

        // then
        assertEquals(List.of("upper-landing_2026-05-06.tautlog"), recordings(folder));
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(List.of(), outings.get(0).of("clock"), "of the first no time is known");
        assertEquals(instrument.sent(), outings.get(0).counts());
        assertEquals(restarted.sent(), outings.get(1).counts());
    }

    /** A recording whose outing was cut off half a second after its first fix; a second later comes the next fix. */
    private Path cutOff(LoggerFolder folder, String name, String... fixes) throws Exception {
        Files.createDirectories(folder.recordings());
        Path file = folder.recordings().resolve(name);
        try (RecordingWriter writer = RecordingWriter.open(file, "upper-landing")) {
            OutingWriter cut = writer.begin(new OutingStart(
                    instrument.instrument(),
                    LoggerFolder.RIG,
                    folder.installation().cellCalibration(),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            cut.tension(0, 1_000_000, 0, new int[25], 0, 25);
            long tick = 1_000_000;
            for (String fix : fixes) {
                cut.clock(tick, ChronoUnit.MICROS.between(Instant.EPOCH, Instant.parse(fix)));
                tick += 1_000_000;
            }
            cut.commit();
        }
        return file;
    }

    private static List<String> recordings(LoggerFolder folder) throws IOException {
        try (Stream<Path> files = Files.list(folder.recordings())) {
            return files.map(file -> name(file.toString()))
                    .filter(file -> file.endsWith(".tautlog"))
                    .sorted()
                    .toList();
        }
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
