package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.cli.OldRecordings.Told;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.wire.BeaconState;
import tautlog.recording.Recording;
import tautlog.recording.Verification;

/** The packaged logger on a small disk with old recordings, of which little room is left while it records. */
@Timeout(180)
class ThinningIT {
    private static final int MEGABYTES = 96;
    private static final int SAMPLES = 25;
    /** Of an old outing: about 4 MB. */
    private static final int OLD_SAMPLES = 2_000_000;

    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @Test
    void thinsTheOldestWithoutFindingsUntilTheReserveIsThereAgainAndRecordsOn() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(path.resolve("recordings"), MEGABYTES);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: three old recordings; in the oldest a shock was found
            LoggerFolder folder = allowing("keep = \"findings\"\n", terminal);
            Path shock = OldRecordings.write(folder.recordings(), "2026-04-01", OLD_SAMPLES, Told.A_SHOCK);
            Path quiet = OldRecordings.write(folder.recordings(), "2026-04-02", OLD_SAMPLES, Told.NOTHING);
            Path later = OldRecordings.write(folder.recordings(), "2026-04-03", OLD_SAMPLES, Told.NOTHING);
            byte[] shockBefore = Files.readAllBytes(shock);
            byte[] laterBefore = Files.readAllBytes(later);
            long quietBefore = Files.size(quiet);
            StartedDaemon logger = start(folder, terminal);
            try {
                SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);
                feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
                assertEquals(0, disk(folder).get("thinned_outings").getAsInt());

                // when: a little less than the reserve is left
                disk.fillUpTo(DiskReserve.BYTES - (1 << 20));
                feed.until("fault", () -> feed.shown() == BeaconState.FAULT);
                feed.until("thinning", () -> disk(folder).get("thinned_outings").getAsInt() > 0);
                feed.until("a clear beacon again", () -> feed.shown() == BeaconState.CLEAR);

                // then: the room is there, no more went than had to
                assertTrue(disk.freeBytes() >= DiskReserve.BYTES);
                assertTrue(Files.size(quiet) < quietBefore / 10, () -> "thinned");
                assertArrayEquals(shockBefore, Files.readAllBytes(shock));
                assertArrayEquals(laterBefore, Files.readAllBytes(later));
                assertEquals(1, thinned(quiet));
                assertTrue(disk(folder).get("thinned_bytes").getAsLong() > 3_000_000);
                assertTrue(text(folder).contains("thinned      1 outings since the start"), text(folder));
                assertTrue(logger.stderr().contains("thinned file=upper-landing_2026-04-02.tautlog"), logger.stderr());

                // when: it fills again, until nothing is left that may go
                disk.fillUpTo(DiskReserve.BYTES - (12 << 20));
                feed.until("thinning", () -> disk(folder).get("thinned_outings").getAsInt() > 1);
                feed.forSeconds(7);

                // then: it goes on saying so
                assertEquals(1, thinned(later));
                assertArrayEquals(shockBefore, Files.readAllBytes(shock));
                assertEquals(BeaconState.FAULT, feed.shown());
                assertTrue(disk(folder).get("low").getAsBoolean());

                // and has recorded all the while
                assertEquals(0, disk(folder).get("lost_samples").getAsInt());
                assertTrue(terminal.waitUntilTaken(PATIENCE));
                logger.terminate();
                assertEquals(143, logger.exitCode(), logger.stderr());
                List<StoredOuting> outings = StoredOuting.readAll(written(folder));
                assertEquals(instrument.sent(), outings.get(0).counts());
                assertEquals(List.of(), leftOver(folder));
            } catch (AssertionError failed) {
                throw new AssertionError(failed.getMessage() + "\nThe logger said:\n" + logger.stderr(), failed);
            } finally {
                logger.kill();
            }
        }
    }

    @Test
    void thinsNothingUnlessTheOwnerAllowsIt() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(path.resolve("recordings"), MEGABYTES);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            LoggerFolder folder = allowing("", terminal);
            Path quiet = OldRecordings.write(folder.recordings(), "2026-04-02", OLD_SAMPLES, Told.NOTHING);
            byte[] before = Files.readAllBytes(quiet);
            disk.fillUpTo(DiskReserve.BYTES - (1 << 20));
            StartedDaemon logger = start(folder, terminal);
            try {
                // when
                SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);
                feed.until("low", () -> disk(folder).get("low").getAsBoolean());
                feed.forSeconds(12);

                // then
                assertArrayEquals(before, Files.readAllBytes(quiet));
                assertEquals(BeaconState.FAULT, feed.shown());
                assertEquals("all", disk(folder).get("keep").getAsString());
                assertFalse(text(folder).contains("thinned"), text(folder));
            } finally {
                logger.kill();
            }
        }
    }

    private LoggerFolder allowing(String keep, PseudoTerminal terminal) throws IOException {
        LoggerFolder folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
        Files.writeString(folder.config(), keep + Files.readString(folder.config()));
        return folder;
    }

    private StartedDaemon start(LoggerFolder folder, PseudoTerminal terminal) throws Exception {
        StartedDaemon logger =
                StartedDaemon.start(path, "run", "--config", folder.config().toString());
        assertTrue(terminal.waitForReader(PATIENCE), logger.stderr());
        return logger;
    }

    private static int thinned(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            Verification found = recording.verify();
            assertEquals(List.of(), found.damages());
            return found.thinned().size();
        }
    }

    private static Path written(LoggerFolder folder) throws IOException {
        try (Stream<Path> files = Files.list(folder.recordings())) {
            return files.filter(file -> file.toString().endsWith(".tautlog"))
                    .filter(file -> !file.toString().contains("2026-04-0"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static List<Path> leftOver(LoggerFolder folder) throws IOException {
        try (Stream<Path> files = Files.list(folder.recordings())) {
            return files.filter(file -> file.toString().contains("-thin")).toList();
        }
    }

    private static JsonObject disk(LoggerFolder folder) {
        return JsonParser.parseString(status(folder, "--json"))
                .getAsJsonObject()
                .getAsJsonObject("disk");
    }

    private static String text(LoggerFolder folder) {
        return status(folder);
    }

    private static String status(LoggerFolder folder, String... more) {
        return InProcess.out(List.of("status", "--config", folder.config().toString()), more);
    }
}
