package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/**
 * {@code kill -9} at random moments while the packaged logger starts, commits its tail, seals blocks and closes. After each:
 * the file opens, verifies, and holds bit for bit everything that was sent more than one second before; the outing before has
 * all its findings by now; and a copy of the main file alone never passes for whole when it is not. {@code -Dtautlog.kills=200} is
 * a full run: so many kills while it records or closes, and a third as many while it starts; what each kill left stands in
 * {@code target/kills.txt}.
 */
@Timeout(1_800)
class KillIT {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final int KILLS = Integer.getInteger("tautlog.kills", 12);
    private static final int LANES = Integer.getInteger("tautlog.lanes", 2);
    /** One kill at the start after so many of a running recording. */
    private static final int RUNNING_A_START = 3;

    private static final int KILLS_A_FILE = 20;
    private static final long FRAME_MILLIS = 50;

    /** What the logger is at when it is killed. */
    private enum Moment {
        /** Java starts, the folder is claimed, outings cut off before are finished, the port is opened. */
        START(0, 1_500, 25),
        /** 500 samples a second: small rows, a commit every half a second. */
        TAIL(200, 2_500, 25),
        /** 10,000 samples a second: a block of 16,384 is sealed every 1.6 s. */
        SEAL(1_200, 3_300, 500),
        /** Asked to stop, it seals the rest, ends the outing and closes. */
        CLOSE(0, 400, 25);

        private final int leastMillis;
        private final int spanMillis;
        private final int samplesAFrameTime;

        Moment(int leastMillis, int spanMillis, int samplesAFrameTime) {
            this.leastMillis = leastMillis;
            this.spanMillis = spanMillis;
            this.samplesAFrameTime = samplesAFrameTime;
        }

        long millis(Random random) {
            return leastMillis + random.nextInt(spanMillis);
        }
    }

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @TempDir
    Path path;

    @Test
    void losesAtMostTheLastSecondWhenItIsKilledAtAnyMoment() throws Exception {
        ExecutorService lanes = Executors.newFixedThreadPool(LANES);
        try {
            List<Callable<List<String>>> work = new ArrayList<>();
            for (int lane = 0; lane < LANES; lane++) {
                work.add(new Lane(lane, Files.createDirectory(path.resolve("lane" + lane)))::killAll);
            }
            List<String> lines = new ArrayList<>();
            for (Future<List<String>> lane : lanes.invokeAll(work)) {
                lines.addAll(lane.get());
            }
            assertEquals(
                    KILLS,
                    lines.stream().filter(line -> !line.contains(" start ")).count());
            Files.write(Path.of(System.getProperty("tautlog.root"), "logger", "target", "kills.txt"), lines);
        } finally {
            lanes.shutdownNow();
        }
    }

    /** Kills one logger after the other, a new folder every {@link #KILLS_A_FILE}. */
    private static final class Lane {
        private final int lane;
        private final Path path;
        private final Random random;
        private final List<String> lines = new ArrayList<>();
        private Path folder = Path.of("");
        private int begun;
        private String said = "";
        private int boot = 100;

        Lane(int lane, Path path) {
            this.lane = lane;
            this.path = path;
            random = new Random(20_260_504 + lane);
        }

        List<String> killAll() throws Exception {
            int running = KILLS / LANES + (lane < KILLS % LANES ? 1 : 0);
            int kills = running + (running + RUNNING_A_START - 1) / RUNNING_A_START;
            for (int k = 0; k < kills; k++) {
                if (k % KILLS_A_FILE == 0) {
                    folder = Files.createDirectory(path.resolve("day" + k));
                    begun = 0;
                }
                kill(k, Moment.values()[k % Moment.values().length]);
                if (k % KILLS_A_FILE == KILLS_A_FILE - 1 || k == kills - 1) {
                    goesOnInTheSameFile();
                }
            }
            return lines;
        }

        private Path file() {
            return folder.resolve("recordings").resolve("upper-landing_2026-05-04.tautlog");
        }

        private void kill(int k, Moment moment) throws Exception {
            // given
            SmallInstrument instrument = new SmallInstrument(boot++);
            long millis = moment.millis(random);
            String name =
                    "lane " + lane + " kill " + k + " " + moment.name().toLowerCase(Locale.ROOT) + " " + millis + " ms";

            // when
            int mustHave = moment == Moment.START ? startAndKill(millis) : recordAndKill(instrument, moment, millis);

            // then
            List<StoredOuting> read = readIfMade(mustHave, name);
            int outings =
                    read.isEmpty() ? 0 : read.get(read.size() - 1).outing().index() + 1;
            List<Integer> stored = outings > begun ? read.get(read.size() - 1).counts() : List.of();
            assertTrue(
                    stored.size() >= mustHave,
                    name + ": " + stored.size() + " stored, older than 1 s: " + mustHave + "\n" + said);
            assertEquals(instrument.sent().subList(0, stored.size()), stored, name);
            mainFileAloneNeverPassesForWhole(k, name);
            if (outings > begun && begun > 0) {
                assertTrue(read.get(0).outing().closed(), name + ": the one before is finished");
            }
            begun = outings;
            lines.add(name + ": sent " + instrument.sent().size() + ", older than 1 s " + mustHave + ", stored "
                    + stored.size() + ", outings " + outings + ", verified");
        }

        /** Killed so early, there may be no file yet, or one in the making; then it is as if it were not there. */
        private List<StoredOuting> readIfMade(int mustHave, String name) throws IOException {
            try {
                return Files.exists(file()) ? StoredOuting.readFrom(file(), Math.max(0, begun - 1)) : List.of();
            } catch (RecordingException unmade) {
                assertEquals(0, mustHave, name + ": " + unmade.getMessage());
                assertTrue(String.valueOf(unmade.getMessage()).contains("is empty"), name + ": " + unmade.getMessage());
                return List.of();
            }
        }

        /** RECORDING.md, "Copied alone". */
        private void mainFileAloneNeverPassesForWhole(int k, String name) throws IOException {
            if (!Files.exists(file())) {
                return;
            }
            Path alone = Files.copy(
                    file(), Files.createDirectory(path.resolve("alone" + k)).resolve("day.tautlog"));
            try (Recording copy = Recording.open(alone)) {
                Verification found = copy.verify();
                if (found.isIntact()) {
                    try (Recording whole = Recording.open(file())) {
                        assertEquals(whole.verify().samples(), found.samples(), name + ": the main file alone");
                        assertEquals(whole.outings().size(), found.outings().size(), name + ": the main file alone");
                    }
                }
            } catch (RecordingException refused) {
                assertTrue(String.valueOf(refused.getMessage()).contains("-wal"), name + ": " + refused.getMessage());
            }
        }

        private int startAndKill(long afterMillis) throws Exception {
            try (PseudoTerminal line = PseudoTerminal.open()) {
                StartedDaemon logger = run(line);
                TimeUnit.MILLISECONDS.sleep(afterMillis);
                logger.kill();
                return 0;
            }
        }

        /** How many samples had been sent one second before the kill. */
        private int recordAndKill(SmallInstrument instrument, Moment moment, long millis) throws Exception {
            try (PseudoTerminal line = PseudoTerminal.open()) {
                StartedDaemon logger = run(line);
                assertTrue(line.waitForReader(PATIENCE), logger.stderr());
                List<Long> sentNanos = send(instrument, line, moment, moment == Moment.CLOSE ? 1_300 : millis);
                if (moment == Moment.CLOSE) {
                    logger.terminate();
                    TimeUnit.MILLISECONDS.sleep(millis);
                }
                long killedNanos = System.nanoTime();
                logger.kill();
                said = logger.stderr();
                long old = sentNanos.stream()
                        .filter(sent -> killedNanos - sent > TimeUnit.SECONDS.toNanos(1))
                        .count();
                return (int) old * moment.samplesAFrameTime;
            }
        }

        /** Half the time slack, half the time 25 kN on a limit of 20 kN, in real time; when each piece was sent. */
        private static List<Long> send(SmallInstrument instrument, PseudoTerminal line, Moment moment, long millis)
                throws Exception {
            List<Long> sentNanos = new ArrayList<>();
            long start = System.nanoTime();
            long end = start + TimeUnit.MILLISECONDS.toNanos(millis);
            while (System.nanoTime() < end) {
                boolean slack = instrument.sent().size() % 1_000 < 500;
                line.write(instrument
                        .hold(slack ? 0 : 2_500_000, moment.samplesAFrameTime)
                        .take());
                sentNanos.add(System.nanoTime());
                long due = start + TimeUnit.MILLISECONDS.toNanos(FRAME_MILLIS * sentNanos.size());
                TimeUnit.NANOSECONDS.sleep(Math.min(due, end) - System.nanoTime());
            }
            return sentNanos;
        }

        private void goesOnInTheSameFile() throws Exception {
            SmallInstrument instrument = new SmallInstrument(boot++).hold(0, 500);
            StartedDaemon logger = recordUntilClosed(instrument);
            assertEquals(0, logger.exitCode(), logger.stderr());
            List<StoredOuting> outings = StoredOuting.readAll(file());
            assertEquals(begun + 1, outings.size(), logger.stderr());
            assertTrue(outings.stream().allMatch(outing -> outing.outing().closed()));
            assertEquals(instrument.sent(), outings.get(begun).counts());
        }

        private StartedDaemon recordUntilClosed(SmallInstrument instrument) throws Exception {
            try (PseudoTerminal line = PseudoTerminal.open()) {
                StartedDaemon logger = run(line, "--until-closed");
                assertTrue(line.waitForReader(PATIENCE), logger.stderr());
                line.write(instrument.take());
                assertTrue(line.waitUntilTaken(PATIENCE));
                return logger;
            }
        }

        private StartedDaemon run(PseudoTerminal line, String... more) throws IOException {
            LoggerFolder at = LoggerFolder.at(folder, line.portName(), LoggerFolder.DEVICE_CLOCK);
            List<String> arguments =
                    new ArrayList<>(List.of("run", "--config", at.config().toString()));
            arguments.addAll(List.of(more));
            return StartedDaemon.start(folder, arguments.toArray(String[]::new));
        }
    }
}
