package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.wire.BeaconState;
import tautlog.recording.Recording;

/** The packaged logger on a disk that really fills up while it records, and has room again later. */
@Timeout(180)
class FullDiskIT {
    private static final int SAMPLES = 25;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);

    @Test
    void saysSoBeforeAndWhenItIsFullAndStoresEverythingWhenThereIsRoomAgain() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(path.resolve("recordings"), 96);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            StartedDaemon logger =
                    StartedDaemon.start(path, "run", "--config", folder.config().toString());
            try {
                assertTrue(terminal.waitForReader(PATIENCE), logger.stderr());
                SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);

                // given: it records on a disk with room
                feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
                feed.until("a recording", () -> !disk(folder).get("last_link").isJsonNull());
                assertFalse(disk(folder).get("low").getAsBoolean());

                // when: less than the reserve is left
                disk.fillUpTo(DiskReserve.BYTES / 2);
                feed.until("low disk", () -> disk(folder).get("low").getAsBoolean());
                feed.forSeconds(2); // a pause of the feed shows fault, too: that is over by now
                assertEquals(BeaconState.FAULT, feed.shown());

                // then: it says so and records on
                assertTrue(disk(folder).get("low").getAsBoolean());
                assertTrue(disk(folder).get("trouble").isJsonNull());
                assertTrue(text(folder).contains("NEARLY FULL"), text(folder));
                assertTrue(logger.stderr().contains("nearly full"), logger.stderr());
                int soFar = instrument.sent().size();
                feed.forSeconds(2);
                assertTrue(committed(folder) > soFar, "still recording");

                // when: nothing is left
                disk.fillUpTo(0);
                feed.until("trouble", () -> !disk(folder).get("trouble").isJsonNull());
                int committed = committed(folder);
                feed.forSeconds(4);

                // then: it says what to do, and what comes waits in memory
                assertTrue(text(folder).contains("TROUBLE"), text(folder));
                assertTrue(
                        logger.stderr().contains("the disk is full. Free space; nothing committed is lost"),
                        logger.stderr());
                assertTrue(disk(folder).get("lag_s").getAsDouble() > 3, () -> "lag");
                assertEquals(0, disk(folder).get("lost_samples").getAsInt());
                assertEquals(BeaconState.FAULT, feed.shown());
                assertEquals(committed, committed(folder), "nothing committed is lost, and nothing can be added");

                // when: there is room again
                disk.free();
                feed.until("a clear beacon again", () -> feed.shown() == BeaconState.CLEAR);

                // then: all of it is stored
                assertTrue(disk(folder).get("trouble").isJsonNull());
                assertFalse(disk(folder).get("low").getAsBoolean());
                assertTrue(terminal.waitUntilTaken(PATIENCE));
                logger.terminate();
                assertEquals(143, logger.exitCode(), logger.stderr());
                List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
                assertEquals(1, outings.size());
                assertTrue(outings.get(0).outing().ended());
                assertEquals(instrument.sent(), outings.get(0).counts());
                assertTrue(logger.stderr().contains("takes the recording again"), logger.stderr());
            } catch (AssertionError failed) {
                throw new AssertionError(failed.getMessage() + "\nThe logger said:\n" + logger.stderr(), failed);
            } finally {
                logger.kill();
            }
        }
    }

    @Test
    void startsOnAFullDiskAndStoresEverythingWhenThereIsRoom() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(path.resolve("recordings"), 96);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: nothing is left when the ignition is turned on
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            disk.fillUpTo(0);

            // when
            startsFullAndRecovers(disk, terminal, folder);

            // then
            List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
            assertEquals(1, outings.size());
            assertEquals(instrument.sent(), outings.get(0).counts());
        }
    }

    @Test
    void startsOnADiskThatTheDaysOwnRecordingFilled() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(path.resolve("recordings"), 96);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: an outing that a power cut ended, and nothing is left on the disk
            LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
            StartedDaemon cut =
                    StartedDaemon.start(path, "run", "--config", folder.config().toString());
            assertTrue(terminal.waitForReader(PATIENCE), cut.stderr());
            new SteadyFeed(instrument, terminal, SAMPLES)
                    .until("a recording", () -> !disk(folder).get("last_link").isJsonNull());
            int before = instrument.sent().size();
            cut.kill();
            int stored = committed(folder);
            assertTrue(stored > 0 && stored <= before);
            disk.fillUpTo(0);

            // when
            startsFullAndRecovers(disk, terminal, folder);

            // then
            List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
            assertEquals(2, outings.size());
            assertEquals(instrument.sent().subList(0, stored), outings.get(0).counts());
            assertEquals(
                    instrument.sent().subList(before, instrument.sent().size()),
                    outings.get(1).counts());
        }
    }

    /** Starts the logger while the disk is full, makes room, stops it in order. */
    private void startsFullAndRecovers(SmallDisk disk, PseudoTerminal terminal, LoggerFolder folder) throws Exception {
        StartedDaemon logger =
                StartedDaemon.start(path, "run", "--config", folder.config().toString());
        try {
            assertTrue(terminal.waitForReader(PATIENCE), logger.stderr());
            SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);
            feed.until("trouble", () -> !disk(folder).get("trouble").isJsonNull());
            feed.forSeconds(2);
            assertEquals(BeaconState.FAULT, feed.shown());
            assertTrue(text(folder).contains("TROUBLE"), text(folder));
            assertTrue(logger.stderr().contains("the disk"), logger.stderr());

            disk.free();
            feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
            assertTrue(disk(folder).get("trouble").isJsonNull());
            assertEquals(0, disk(folder).get("lost_samples").getAsInt());
            assertTrue(terminal.waitUntilTaken(PATIENCE));
            logger.terminate();
            assertEquals(143, logger.exitCode(), logger.stderr());
        } catch (AssertionError failed) {
            throw new AssertionError(failed.getMessage() + "\nThe logger said:\n" + logger.stderr(), failed);
        } finally {
            logger.kill();
        }
    }

    private static int committed(LoggerFolder folder) throws Exception {
        try (Recording recording = Recording.open(StoredOuting.only(folder.recordings()))) {
            return (int) recording.outings().get(0).samples();
        }
    }

    private JsonObject disk(LoggerFolder folder) throws Exception {
        return JsonParser.parseString(status(folder, "--json"))
                .getAsJsonObject()
                .getAsJsonObject("disk");
    }

    private String text(LoggerFolder folder) throws Exception {
        return status(folder);
    }

    private static String status(LoggerFolder folder, String... more) {
        return InProcess.out(List.of("status", "--config", folder.config().toString()), more);
    }
}
