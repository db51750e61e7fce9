package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.recording.RecordingException;

/** The packaged logger on a real serial device, from outside. */
@Timeout(600)
class RunIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    /** How often it is killed; a full run takes 200. */
    private static final int KILLS = Integer.getInteger("tautlog.kills", 12);

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

    @Test
    void losesAtMostTheLastSecondWhenItIsKilledAtAnyMoment() throws Exception {
        Random random = new Random(20_260_504);
        Path file = path.resolve("recordings").resolve("upper-landing_2026-05-04.tautlog");
        int begun = 0;
        for (int k = 0; k < KILLS; k++) {
            // given
            SmallInstrument instrument = new SmallInstrument(100 + k);

            // when: killed at a random moment while it records
            int mustHave = recordAndKill(instrument, 200 + random.nextInt(2_300));

            // then: it opens, verifies, holds what is older than a second; the outings before have their findings by
            // now
            List<StoredOuting> outings = readIfMade(file, mustHave);
            List<Integer> stored = outings.size() > begun ? outings.get(begun).counts() : List.of();
            assertBitForBit(instrument.sent(), stored, mustHave);
            assertTrue(
                    outings.stream()
                            .limit(begun)
                            .allMatch(before -> before.outing().closed()),
                    "kill " + k);
            begun = outings.size();
        }
        assertTrue(begun > KILLS / 2, "most kills came after an outing had begun");

        // and the next start goes on in the same file
        StartedDaemon logger = recordUntilClosed(new SmallInstrument(99).hold(0, 500));
        assertEquals(0, logger.exitCode(), logger.stderr());
        List<StoredOuting> outings = StoredOuting.readAll(file);
        assertEquals(begun + 1, outings.size());
        assertTrue(outings.stream().allMatch(outing -> outing.outing().closed()));
    }

    /** A kill in the first moments may come before the file was made, or while it was; then it is as if it were not there. */
    private static List<StoredOuting> readIfMade(Path file, int mustHave) throws IOException {
        try {
            return Files.exists(file) ? StoredOuting.readAll(file) : List.of();
        } catch (RecordingException unmade) {
            assertEquals(0, mustHave, unmade.getMessage());
            assertTrue(String.valueOf(unmade.getMessage()).contains("is empty"), unmade.getMessage());
            return List.of();
        }
    }

    /** How many samples had been sent one second before the kill. */
    private int recordAndKill(SmallInstrument instrument, long killAfterMillis) throws Exception {
        try (PseudoTerminal line = PseudoTerminal.open()) {
            StartedDaemon logger = run(folder(line));
            assertTrue(line.waitForReader(PATIENCE), logger.stderr());
            List<Long> sentNanos = new ArrayList<>();
            long start = System.nanoTime();
            long killNanos = start + TimeUnit.MILLISECONDS.toNanos(killAfterMillis);
            while (System.nanoTime() < killNanos) {
                // half a second slack, half a second of 25 kN on a limit of 20 kN, in real time
                boolean slack = instrument.sent().size() % 500 < 250;
                line.write(instrument.hold(slack ? 0 : 2_500_000, 25).take());
                sentNanos.add(System.nanoTime());
                long due = start + TimeUnit.MILLISECONDS.toNanos(50L * sentNanos.size());
                TimeUnit.NANOSECONDS.sleep(Math.min(due, killNanos) - System.nanoTime());
            }
            long killedNanos = System.nanoTime();
            logger.kill();
            long oldFrames = sentNanos.stream()
                    .filter(sent -> killedNanos - sent > TimeUnit.SECONDS.toNanos(1))
                    .count();
            return (int) (25 * oldFrames);
        }
    }

    private static void assertBitForBit(List<Integer> sent, List<Integer> stored, int mustHave) {
        assertTrue(stored.size() >= mustHave, () -> stored.size() + " stored, " + mustHave + " are older than 1 s");
        assertEquals(sent.subList(0, stored.size()), stored);
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
