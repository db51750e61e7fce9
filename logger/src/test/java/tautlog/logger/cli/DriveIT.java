package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.drive.SmallRecordings;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.wire.BeaconState;
import tautlog.recording.Recording;

/**
 * The packaged logger at 1,000 samples a second, and a drive that is really mounted: whole, pulled out half-way, full, ailing. A layer in C
 * between the logger and the drive makes it slow or faulty ({@link WrittenDown}).
 */
@Timeout(180)
class DriveIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final int SAMPLES = 50;
    private static final String MONDAY = "upper-landing_2026-05-04.tautlog";
    private static final String TUESDAY = "upper-landing_2026-05-05.tautlog";

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);
    private LoggerFolder folder = new LoggerFolder(Path.of(""));
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
    void copiesClosedDaysAndTodayWhileItRecordsAndTheBeaconTells() throws Exception {
        try (PluggedDrive drive = new PluggedDrive(path, 32);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: a day that is closed, and no drive
            prepare(terminal);
            StartedDaemon logger = start(drive, terminal);
            SteadyFeed feed = recording(terminal);
            feed.forSeconds(3);
            assertEquals(
                    List.of(), PluggedDrive.names(drive.place()), "nothing is written to a folder that is no drive");
            assertEquals("none", drive().get("state").getAsString());

            // when
            drive.plug();

            // then: the lamp says that it is noticed, and when it is finished
            feed.until("caution", () -> feed.shown() == BeaconState.CAUTION);
            feed.until("a drive that is finished", () -> is("verified"));
            feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
            assertEquals(2, drive().get("copied").getAsInt(), drive()::toString);
            assertTrue(text().contains("2 copied and verified"), text());
            drive.pull();
            feed.until("no drive", () -> !drive().get("plugged").getAsBoolean());
            assertNothingLagged();

            // then: what is on it is what was recorded, and opens at the desk
            String today = today();
            assertEquals(List.of("last-links.txt", MONDAY, today), drive.names());
            assertEquals(
                    lastLink(folder.recordings().resolve(MONDAY)),
                    lastLink(drive.ours().resolve(MONDAY)));
            List<Integer> copied =
                    StoredOuting.readAll(drive.ours().resolve(today)).get(0).counts();
            assertFalse(copied.isEmpty());
            assertEquals(instrument.sent().subList(0, copied.size()), copied);
            String links = drive.ours().resolve("last-links.txt").toString();
            assertTrue(desk("report", drive.ours().toString()).contains("upper-landing"));
            desk("verify", drive.ours().toString(), "--against", links);
            endsWithEverythingStored(terminal, logger);
            assertTrue(desk("verify", folder.recordings().toString(), "--against", links)
                    .contains("goes through it"));
        }
    }

    @Test
    void pulledOutHalfWayItHarmsNothingAndGoesOnTheNextTime() throws Exception {
        try (PluggedDrive drive = new PluggedDrive(path, 32);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            prepare(terminal);
            StartedDaemon logger = start(drive, terminal);
            SteadyFeed feed = recording(terminal);
            ails("stall 4000");
            drive.plug();
            feed.until("a copy half-way", () -> drive.names().contains(MONDAY + ".part"));

            // when
            drive.pull();
            feed.until("trouble", () -> is("trouble"));

            // then
            assertTrue(drive().get("trouble").toString().contains("pulled out"), drive()::toString);
            assertNoRecordingOn(drive);
            assertEquals(List.of(), PluggedDrive.names(drive.place()));
            feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
            assertNothingLagged();

            // when
            ails("");
            drive.plug();
            feed.until("a drive that is finished", () -> is("verified"));

            // then
            assertEquals(List.of("last-links.txt", MONDAY, today()), drive.names());
            desk("verify", drive.ours().toString());
            endsWithEverythingStored(terminal, logger);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 30}) // input/output error, read-only file system
    void recordsOnWhileTheDriveRefusesAndSaysSo(int errno) throws Exception {
        try (PluggedDrive drive = new PluggedDrive(path, 32);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            prepare(terminal);
            StartedDaemon logger = start(drive, terminal);
            SteadyFeed feed = recording(terminal);
            ails("errno " + errno);

            // when
            drive.plug();
            feed.until("trouble", () -> is("trouble"));
            feed.forSeconds(4);

            // then
            assertEquals(BeaconState.CAUTION, feed.shown(), "until it is pulled out");
            assertTrue(text().contains("TROUBLE"), text());
            assertTrue(logger.stderr().contains("the drive is not finished"), logger.stderr());
            assertFalse(drive.names().contains(MONDAY), () -> "refused");
            assertNothingLagged();

            // when
            drive.pull();
            feed.until("a clear beacon", () -> feed.shown() == BeaconState.CLEAR);
            ails("");
            drive.plug();
            feed.until("a drive that is finished", () -> is("verified"));

            // then
            assertEquals(List.of("last-links.txt", MONDAY, today()), drive.names());
            endsWithEverythingStored(terminal, logger);
        }
    }

    @Test
    void keepsWhatFitsWholeOnADriveThatIsFull() throws Exception {
        try (PluggedDrive drive = new PluggedDrive(path, 32);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given: Monday fits, Tuesday does not
            prepare(terminal);
            Path tuesday = folder.recordings().resolve(TUESDAY);
            for (int boot = 0; boot < 40; boot++) {
                SmallRecordings.closed(tuesday, boot);
            }
            long monday = Files.size(folder.recordings().resolve(MONDAY));
            assertTrue(Files.size(tuesday) > monday + 1_000_000, () -> "large enough");
            drive.disk().fillUpTo(monday + 800_000);
            StartedDaemon logger = start(drive, terminal);
            SteadyFeed feed = recording(terminal);

            // when
            drive.plug();
            feed.until("trouble", () -> is("trouble"));

            // then
            assertTrue(drive().get("trouble").toString().contains("no room for " + TUESDAY), drive()::toString);
            assertEquals(List.of("last-links.txt", MONDAY, today()), drive.names());
            desk("verify", drive.ours().toString());
            assertNothingLagged();

            // when
            drive.pull();
            drive.disk().free();
            feed.until("no drive", () -> !drive().get("plugged").getAsBoolean());
            drive.plug();
            feed.until("a drive that is finished", () -> is("verified"));

            // then
            assertEquals(lastLink(tuesday), lastLink(drive.ours().resolve(TUESDAY)));
            endsWithEverythingStored(terminal, logger);
        }
    }

    @Test
    void powerThatGoesHalfWayLeavesNothingThatTheNextStartDoesNotPutRight() throws Exception {
        try (PluggedDrive drive = new PluggedDrive(path, 32);
                PseudoTerminal terminal = PseudoTerminal.open()) {
            // given
            prepare(terminal);
            StartedDaemon logger = start(drive, terminal);
            SteadyFeed feed = recording(terminal);
            ails("stall 4000");
            drive.plug();
            feed.until("a copy half-way", () -> drive.names().contains(MONDAY + ".part"));

            // when
            logger.kill();
            assertNoRecordingOn(drive);
            ails("");
            start(drive, terminal);
            SteadyFeed again = recording(terminal);
            again.until("a drive that is finished", () -> is("verified"));
            again.until("today's recording on it", () -> drive.names().contains(today()));

            // then
            again.until("the first visit's end", () -> is("verified"));
            assertEquals(List.of("last-links.txt", MONDAY, today()), drive.names());
            desk("verify", drive.ours().toString());
        }
    }

    private void prepare(PseudoTerminal terminal) throws Exception {
        folder = LoggerFolder.at(path, terminal.portName(), LoggerFolder.HOST_CLOCK);
        Files.writeString(folder.config(), "[drive]\npath = \"drive\"\n", StandardOpenOption.APPEND);
        Files.createDirectories(folder.recordings());
        SmallRecordings.closed(folder.recordings().resolve(MONDAY), 1);
    }

    private StartedDaemon start(PluggedDrive drive, PseudoTerminal terminal) throws Exception {
        StartedDaemon logger = StartedDaemon.startIn(
                WrittenDown.environment(layer, drive.place(), path.resolve("writes.journal"), path.resolve("disk")),
                path,
                "run",
                "--config",
                folder.config().toString());
        assertTrue(terminal.waitForReader(PATIENCE), logger.stderr());
        return logger;
    }

    private SteadyFeed recording(PseudoTerminal terminal) throws Exception {
        SteadyFeed feed = new SteadyFeed(instrument, terminal, SAMPLES);
        feed.until("a recording", () -> !status("disk").get("last_link").isJsonNull());
        return feed;
    }

    /** How the drive ails from now on; an empty text: it is well. */
    private void ails(String words) throws Exception {
        if (words.isEmpty()) {
            Files.delete(path.resolve("disk"));
        } else {
            Files.writeString(path.resolve("disk"), words);
        }
    }

    /** Nothing half-way stands under a recording's name. */
    private static void assertNoRecordingOn(PluggedDrive drive) throws Exception {
        assertTrue(drive.names().contains(MONDAY + ".part"), drive.names()::toString);
        assertFalse(drive.names().contains(MONDAY), drive.names()::toString);
    }

    private boolean is(String state) {
        return drive().get("state").getAsString().equals(state);
    }

    private void assertNothingLagged() {
        JsonObject disk = status("disk");
        assertEquals(0, disk.get("lost_samples").getAsInt());
        assertTrue(disk.get("trouble").isJsonNull(), disk::toString);
        assertTrue(disk.get("lag_s").getAsDouble() < 5, disk::toString);
    }

    private void endsWithEverythingStored(PseudoTerminal terminal, StartedDaemon logger) throws Exception {
        String today = today();
        assertTrue(terminal.waitUntilTaken(PATIENCE));
        logger.terminate();
        assertEquals(143, logger.exitCode(), logger.stderr());
        List<StoredOuting> outings = StoredOuting.readAll(folder.recordings().resolve(today));
        assertEquals(1, outings.size());
        assertEquals(instrument.sent(), outings.get(0).counts());
        assertFalse(PluggedDrive.names(folder.recordings()).contains("drive-copy.part"));
    }

    private String today() {
        return Path.of(status("disk").get("file").getAsString()).getFileName().toString();
    }

    private static String lastLink(Path file) throws Exception {
        try (Recording recording = Recording.open(file)) {
            return recording.lastLink();
        }
    }

    private JsonObject drive() {
        return status("drive");
    }

    private JsonObject status(String part) {
        return JsonParser.parseString(InProcess.out(
                        List.of("status", "--config", folder.config().toString()), "--json"))
                .getAsJsonObject()
                .getAsJsonObject(part);
    }

    private String text() {
        return InProcess.out(List.of("status", "--config", folder.config().toString()));
    }

    /** What the packaged desk program prints, ended with exit code 0. */
    private static String desk(String... arguments) throws Exception {
        Path jar = Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target", "tautlog.jar");
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", jar.toString());
        builder.command().addAll(List.of(arguments));
        Process process = builder.redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), said);
        return said;
    }
}
