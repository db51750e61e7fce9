package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.LoggerRun;
import tautlog.logger.run.LoggerRun.Until;

/**
 * The packaged logger with what it cannot use: exit code 2 or 3, a message that says what to do, and the day's recording reads
 * as before. Where it is that recording that cannot be used, it is the same byte for byte and the day goes on beside it.
 */
@Timeout(120)
class BadInputIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final String NOBODY = "65534";

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @TempDir
    Path path;

    private final SmallInstrument ofTheDay = new SmallInstrument(1);
    private Path file;

    @BeforeEach
    void aRecordingOfTheDayThatIsInOrder() throws Exception {
        LoggerFolder folder = folder("/dev/ttyNONE");
        Files.createDirectories(folder.recordings());
        file = folder.recordings().resolve("upper-landing_2026-05-04.tautlog");
        new LoggerRun(
                        folder.installation(),
                        new ScriptedPort().bring(ofTheDay.hold(0, 500).take()).hangUp(),
                        Until.CLOSED,
                        "tautlogd test")
                .run();
    }

    @Test
    void aMissingPortIsNamedTogetherWithThoseThereAre() throws Exception {
        try (PseudoTerminal there = PseudoTerminal.open()) {
            StartedDaemon logger = refused(
                    3, folder(path.resolve("ttyNONE").toString()), "port " + path.resolve("ttyNONE") + " is not there");
            String said = logger.stderr();
            assertTrue(said.contains("Ports there are: /dev/") || said.contains("No serial port is there now."), said);
            assertTrue(said.contains("Plug the instrument in"), said + there.portName());
        }
    }

    @Test
    void aPortThatAnotherProgramHasIsSaidToBeInUseAndThatProgramLosesNothing() throws Exception {
        SmallInstrument instrument = new SmallInstrument(7);
        try (PseudoTerminal line = PseudoTerminal.open()) {
            // given: a logger at work with a folder of its own
            Path elsewhere = Files.createDirectory(path.resolve("elsewhere"));
            LoggerFolder first = LoggerFolder.at(elsewhere, line.portName(), LoggerFolder.DEVICE_CLOCK);
            StartedDaemon working =
                    StartedDaemon.start(path, "run", "--config", first.config().toString());
            assertTrue(line.waitForReader(PATIENCE), working.stderr());
            line.write(instrument.hold(0, 250).take());

            // when
            refused(3, folder(line.portName()), "port " + line.portName() + " is in use by another program");

            // then
            line.write(instrument.hold(0, 250).take());
            assertTrue(line.waitUntilTaken(PATIENCE));
            working.terminate();
            assertEquals(143, working.exitCode(), working.stderr());
            assertEquals(
                    instrument.sent(),
                    StoredOuting.readAll(StoredOuting.only(first.recordings()))
                            .get(0)
                            .counts());
        }
    }

    @Test
    void everyMistakeInTheRigIsSaidWithItsLineAndTheNearestKey() throws Exception {
        LoggerFolder folder = folder("/dev/ttyNONE");
        Files.writeString(
                path.resolve("rig.toml"),
                LoggerFolder.RIG.replace("rated_pull", "rated_pul").replace("wll = \"20 kN\"", "wll = \"20,5 kN\""));

        StartedDaemon logger = refused(2, folder, "rig.toml:4: winch.rated_pul");

        assertTrue(logger.stderr().contains("Did you mean rated_pull?"), logger.stderr());
        assertTrue(logger.stderr().contains("rig.toml:8: gear.choker.wll: \"20,5 kN\""), logger.stderr());
    }

    @Test
    void recordsBesideARecordingWhoseFirstPageIsDestroyed() throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        Arrays.fill(bytes, 0, 1_024, (byte) 0xff);
        Files.write(file, bytes);

        recordsTwiceBesideIt("is no recording");
    }

    @Test
    void recordsBesideATornRecording() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length / 2));

        recordsTwiceBesideIt("is torn");
    }

    @Test
    void recordsBesideARecordingOfANewerFormat() throws Exception {
        // given: user_version, bytes 60 to 63 of an SQLite file (sqlite.org/fileformat2.html, 1.3)
        byte[] newer = Files.readAllBytes(file);
        newer[63] = 99;
        Files.write(file, newer);

        recordsTwiceBesideIt("newer version");
    }

    /** Starts, records, stops, twice: both outings stand in one file beside the day's, which it must not touch at all. */
    private void recordsTwiceBesideIt(String words) throws Exception {
        byte[] before = Files.readAllBytes(file);
        Path beside = file.resolveSibling("upper-landing_2026-05-04_2.tautlog");
        SmallInstrument instrument = new SmallInstrument(7);
        for (int start = 0; start < 2; start++) {
            try (PseudoTerminal line = PseudoTerminal.open()) {
                StartedDaemon logger = StartedDaemon.start(
                        path,
                        "run",
                        "--config",
                        folder(line.portName()).config().toString());
                assertTrue(line.waitForReader(PATIENCE), logger.stderr());
                line.write(instrument.hold(0, 250).take());
                assertTrue(line.waitUntilTaken(PATIENCE), logger.stderr());
                logger.terminate();
                assertEquals(143, logger.exitCode(), logger.stderr());
                assertTrue(logger.stderr().contains(words), logger.stderr());
                assertTrue(logger.stderr().contains("the day goes on in its next name"), logger.stderr());
                assertTrue(logger.stderr().contains("recording to " + beside), logger.stderr());
                assertTrue(
                        Files.readString(beside.resolveSibling("status.json")).contains(beside.toString()));
            }
            assertArrayEquals(before, Files.readAllBytes(file));
            List<StoredOuting> outings = StoredOuting.readAll(beside);
            assertEquals(start + 1, outings.size());
            assertEquals(instrument.sent(), outings.get(start).counts());
            instrument = new SmallInstrument(8);
        }
    }

    @Test
    void aSecondLoggerOnTheFolderIsRefusedAndTheFirstLosesNothing() throws Exception {
        SmallInstrument instrument = new SmallInstrument(7);
        try (PseudoTerminal line = PseudoTerminal.open();
                PseudoTerminal other = PseudoTerminal.open()) {
            // given
            StartedDaemon first = StartedDaemon.start(
                    path, "run", "--config", folder(line.portName()).config().toString());
            assertTrue(line.waitForReader(PATIENCE), first.stderr());
            line.write(instrument.hold(0, 250).take());

            // when
            StartedDaemon second = StartedDaemon.start(
                    path, "run", "--config", folder(other.portName()).config().toString());

            // then
            assertEquals(3, second.exitCode(), second.stderr());
            assertTrue(second.stderr().contains("in use by another tautlogd"), second.stderr());
            line.write(instrument.hold(0, 250).take());
            assertTrue(line.waitUntilTaken(PATIENCE));
            first.terminate();
            assertEquals(143, first.exitCode(), first.stderr());
            List<StoredOuting> outings = StoredOuting.readAll(file);
            assertEquals(2, outings.size());
            assertEquals(instrument.sent(), outings.get(1).counts());
        }
    }

    @Test
    void aFolderThatThisUserMayNotWriteIsNamed() throws Exception {
        // given: a folder of root's, and the logger as nobody
        LoggerFolder folder = folder("/dev/ttyNONE");
        readableByAll(path);
        byte[] before = Files.readAllBytes(file);
        List<String> asNobody = List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups");
        String refusal = whyNot(asNobody);
        if (!refusal.isEmpty()) {
            Mandatory.skip("running as another user was refused: " + refusal);
        }

        // when
        StartedDaemon logger = StartedDaemon.startAs(
                asNobody, path, "run", "--config", folder.config().toString());

        // then
        assertEquals(3, logger.exitCode(), logger.stderr());
        String said = logger.stderr();
        assertTrue(said.contains("recordings folder " + folder.recordings() + " cannot be written"), said);
        assertTrue(said.contains("Give this user the right to write there"), said);
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    private static void readableByAll(Path folder) throws IOException {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    /** Why this prefix cannot start a program that reads this build; empty when it can. */
    private static String whyNot(List<String> prefix) throws InterruptedException {
        try {
            List<String> command = new java.util.ArrayList<>(prefix);
            command.addAll(List.of("test", "-r", StartedDaemon.JAR.toString()));
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return process.waitFor() == 0 ? "" : said + " exit code " + process.exitValue();
        } catch (IOException noSuchProgram) {
            return String.valueOf(noSuchProgram.getMessage());
        }
    }

    private LoggerFolder folder(String port) throws IOException {
        return LoggerFolder.at(path, port, LoggerFolder.DEVICE_CLOCK);
    }

    /** Starts it; it must end with {@code code}, say {@code words}, and leave the day's recording as it was. */
    private StartedDaemon refused(int code, LoggerFolder folder, String words) throws Exception {
        StartedDaemon logger = ended(code, folder, words);
        List<StoredOuting> outings = StoredOuting.readAll(file);
        assertEquals(1, outings.size());
        assertEquals(ofTheDay.sent(), outings.get(0).counts());
        return logger;
    }

    private StartedDaemon ended(int code, LoggerFolder folder, String words) throws Exception {
        StartedDaemon logger =
                StartedDaemon.start(path, "run", "--config", folder.config().toString());
        assertEquals(code, logger.exitCode(), logger.stderr());
        assertTrue(logger.stderr().contains(words), logger.stderr());
        assertEquals(file, StoredOuting.only(folder.recordings()));
        return logger;
    }
}
