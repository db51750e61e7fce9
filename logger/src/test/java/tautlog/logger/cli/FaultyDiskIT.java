package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.wire.BeaconState;
import tautlog.recording.Recording;

/**
 * The packaged logger at 1,000 samples a second on a disk that stalls, or that refuses every write as a worn card does. A layer
 * in C between the logger and its files makes the disk ail ({@link WrittenDown}).
 */
@Timeout(180)
class FaultyDiskIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final int SAMPLES = 50;
    private static final int ENDED_BY_SIGTERM = 128 + 15;
    private static final int EIO = 5;
    private static final int EROFS = 30;

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);
    private Path layer = Path.of("");

    @BeforeEach
    void compileTheLayer() throws Exception {
        layer = WrittenDown.compile(path);
    }

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @Test
    void losesNothingWhileAFlushTakesFiveSeconds() throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            StartedDaemon logger = start(folder, terminal);
            SteadyFeed feed = recording(folder, terminal);

            // when
            disk("stall 5000");
            feed.until("a lag", () -> status(folder).get("lag_s").getAsDouble() > 4);
            feed.forSeconds(7);
            disk("");

            // then
            feed.until(
                    "a disk that is up to date",
                    () -> status(folder).get("lag_s").getAsDouble() < 1);
            assertEquals(0, status(folder).get("lost_samples").getAsInt());
            endsWithEverythingStored(folder, terminal, logger);
        }
    }

    @ParameterizedTest
    @CsvSource({"read-only file system," + EROFS, "input/output error," + EIO})
    void saysThatTheDiskRefusesAndStoresEverythingWhenItTakesWritesAgain(String name, int errno) throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            StartedDaemon logger = start(folder, terminal);
            SteadyFeed feed = recording(folder, terminal);

            // when
            disk("errno " + errno);
            feed.until("trouble", () -> !status(folder).get("trouble").isJsonNull());
            int committed = committed(folder);
            feed.forSeconds(3);

            // then: it says so, and what is committed can be read
            assertEquals(BeaconState.FAULT, feed.shown(), name + logger.stderr());
            assertTrue(logger.stderr().contains("Nothing committed is lost"), logger.stderr());
            assertEquals(0, status(folder).get("lost_samples").getAsInt(), name);
            assertEquals(committed, committed(folder), name);

            // when
            disk("");
            feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);

            // then
            assertTrue(status(folder).get("trouble").isJsonNull(), name);
            endsWithEverythingStored(folder, terminal, logger);
        }
    }

    @Test
    void doesNotPretendToRecordOnAReadOnlyDiskAndGoesOnWhenItCanBeWritten() throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: it recorded until the disk refused and the power went
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            StartedDaemon logger = start(folder, terminal);
            SteadyFeed feed = recording(folder, terminal);
            disk("errno " + EROFS);
            feed.until("trouble", () -> !status(folder).get("trouble").isJsonNull());
            int committed = committed(folder);
            logger.kill();

            // when
            StartedDaemon refused = started(folder);

            // then
            assertEquals(3, refused.exitCode(), refused.stderr());
            assertTrue(refused.stderr().contains("cannot be written"), refused.stderr());

            // when
            disk("");
            StartedDaemon again = start(folder, terminal);
            int before = instrument.sent().size();
            recording(folder, terminal).forSeconds(2);

            // then
            assertTrue(terminal.waitUntilTaken(PATIENCE));
            again.terminate();
            assertEquals(ENDED_BY_SIGTERM, again.exitCode(), again.stderr());
            List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
            assertEquals(instrument.sent().subList(0, committed), outings.get(0).counts());
            assertEquals(
                    instrument.sent().subList(before, instrument.sent().size()),
                    outings.get(1).counts());
        }
    }

    /** An empty text: it is well. */
    private void disk(String words) throws Exception {
        Path says = path.resolve("disk");
        if (words.isEmpty()) {
            Files.delete(says);
        } else {
            Files.writeString(says, words);
        }
    }

    private StartedDaemon start(LoggerFolder folder, PseudoTerminal terminal) throws Exception {
        StartedDaemon logger = started(folder);
        assertTrue(terminal.waitForReader(PATIENCE), logger.stderr());
        return logger;
    }

    private StartedDaemon started(LoggerFolder folder) throws Exception {
        return StartedDaemon.startIn(
                WrittenDown.environment(
                        layer, folder.recordings(), path.resolve("writes.journal"), path.resolve("disk")),
                path,
                "run",
                "--config",
                folder.config().toString());
    }

    private SteadyFeed recording(LoggerFolder folder, PseudoTerminal terminal) throws Exception {
        SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);
        feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
        feed.until("a recording", () -> !status(folder).get("last_link").isJsonNull());
        return feed;
    }

    private void endsWithEverythingStored(LoggerFolder folder, PseudoTerminal terminal, StartedDaemon logger)
            throws Exception {
        assertTrue(terminal.waitUntilTaken(PATIENCE));
        logger.terminate();
        assertEquals(ENDED_BY_SIGTERM, logger.exitCode(), logger.stderr());
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(1, outings.size());
        assertTrue(outings.get(0).outing().ended());
        assertEquals(instrument.sent(), outings.get(0).counts());
    }

    private static int committed(LoggerFolder folder) throws Exception {
        try (Recording recording = Recording.open(StoredOuting.only(folder.recordings()))) {
            return (int) recording.outings().get(0).samples();
        }
    }

    private static JsonObject status(LoggerFolder folder) {
        return JsonParser.parseString(InProcess.out(
                        List.of("status", "--config", folder.config().toString()), "--json"))
                .getAsJsonObject()
                .getAsJsonObject("disk");
    }
}
