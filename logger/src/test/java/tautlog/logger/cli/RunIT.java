package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;

/** The packaged logger on a real serial device, from outside. */
@Timeout(600)
class RunIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @TempDir
    Path path;

    @Test
    void recordsAHaulEndsWithTheLineAndExitsWithZero() throws Exception {
        // given
        SmallInstrument instrument = new SmallInstrument(7).haul().haul();

        // when
        StartedDaemon logger = recordUntilClosed(instrument);

        // then
        assertEquals(0, logger.exitCode(), logger.stderr());
        StoredOuting outing = StoredOuting.readAll(StoredOuting.only(path.resolve("recordings")))
                .get(0);
        assertTrue(outing.outing().ended());
        assertEquals(instrument.sent(), outing.counts());
        assertEquals(
                List.of("drop", "overload", "pull", "shock"),
                outing.said().stream().map(Finding::kind).distinct().sorted().toList());
    }

    /** Sends all that the instrument has, then hangs up. */
    private StartedDaemon recordUntilClosed(SmallInstrument instrument) throws Exception {
        try (PseudoTerminal line = PseudoTerminal.open()) {
            StartedDaemon logger = run(folder(line), "--until-closed");
            assertTrue(line.waitForReader(PATIENCE), logger.stderr());
            line.write(instrument.take());
            assertTrue(line.waitUntilTaken(PATIENCE));
            return logger;
        }
    }

    @Test
    void closesTheRecordingOnSigtermAndSaysWhereItIs() throws Exception {
        // given
        SmallInstrument instrument = new SmallInstrument(7);
        try (PseudoTerminal line = PseudoTerminal.open()) {
            LoggerFolder folder = folder(line);
            StartedDaemon logger = run(folder);
            assertTrue(line.waitForReader(PATIENCE), logger.stderr());
            line.write(instrument.hold(0, 500).take());
            assertTrue(line.waitUntilTaken(PATIENCE));

            // when
            logger.terminate();

            // then: 128 + 15, as a shell reports a program that SIGTERM ended
            assertEquals(143, logger.exitCode(), logger.stderr());
            Path file = StoredOuting.only(folder.recordings());
            assertTrue(logger.stderr().contains("recording closed: " + file), logger.stderr());
            StoredOuting outing = StoredOuting.readAll(file).get(0);
            assertTrue(outing.outing().ended());
            assertEquals(instrument.sent(), outing.counts());
        }
    }

    @Test
    void opensThePortAgainBehindItsLinkWhenItComesBack() throws Exception {
        // given: the configuration names a link
        SmallInstrument instrument = new SmallInstrument(7);
        Path link = path.resolve("instrument");
        LoggerFolder folder = LoggerFolder.at(path, link.toString(), LoggerFolder.DEVICE_CLOCK);
        StartedDaemon logger;
        try (PseudoTerminal first = PseudoTerminal.open()) {
            first.linkAt(link);
            logger = run(folder);
            assertTrue(first.waitForReader(PATIENCE), logger.stderr());
            first.write(instrument.hold(0, 500).take());
            assertTrue(first.waitUntilTaken(PATIENCE));
        }

        // when: another terminal under the same link
        try (PseudoTerminal second = PseudoTerminal.open()) {
            second.linkAt(link);
            assertTrue(second.waitForReader(PATIENCE), logger.stderr());
            second.write(instrument.hold(0, 500).take());
            assertTrue(second.waitUntilTaken(PATIENCE));
            logger.terminate();
            logger.exitCode();
        }

        // then
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(1, outings.size());
        assertEquals(instrument.sent(), outings.get(0).counts());
        assertTrue(logger.stderr().contains("is back after_s="), logger.stderr());
    }

    private LoggerFolder folder(PseudoTerminal line) throws IOException {
        return LoggerFolder.at(path, line.portName(), LoggerFolder.DEVICE_CLOCK);
    }

    private StartedDaemon run(LoggerFolder folder, String... more) throws IOException {
        List<String> arguments =
                new ArrayList<>(List.of("run", "--config", folder.config().toString()));
        arguments.addAll(List.of(more));
        return StartedDaemon.start(path, arguments.toArray(String[]::new));
    }
}
