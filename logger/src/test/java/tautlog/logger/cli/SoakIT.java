package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.control.ControlClient;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingName;

/**
 * The packaged logger for a long time at 1,000 samples a second, as fast as it takes them, with an outing every ten hours:
 * memory, files and threads stay what they were after the first tenth (the first half, when it publishes), and nothing is lost. {@code -Dtautlog.soak.hours=168} is a
 * full run, a week; what was seen stands in {@code target/soak.txt} and, with both publishers, {@code target/soak-publishing.txt}.
 */
@Timeout(5_400)
class SoakIT {
    private static final Duration PATIENCE = Duration.ofSeconds(120);
    private static final int HOURS = Integer.getInteger("tautlog.soak.hours", 2);
    private static final int MINUTES_AN_OUTING = Math.min(600, HOURS * 20);
    private static final int LOOKS = 40;
    private static final int ENDED_BY_SIGTERM = 128 + 15;

    /** How much of the heap's 64 MB has been touched depends on when it is swept; in a short run the program is still warming up. */
    private static final double MORE_MEGABYTES = HOURS >= 24 ? 12 : 30;

    @TempDir
    Path path;

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    private record Look(long minutes, double residentMegabytes, long files, long threads) {
        static Look at(long minutes, long pid) throws IOException {
            Path process = Path.of("/proc", String.valueOf(pid));
            String resident = Files.readAllLines(process.resolve("status")).stream()
                    .filter(line -> line.startsWith("VmRSS:"))
                    .findFirst()
                    .orElseThrow();
            return new Look(
                    minutes,
                    Long.parseLong(resident.replaceAll("\\D", "")) / 1_024.0,
                    count(process.resolve("fd")),
                    count(process.resolve("task")));
        }

        private static long count(Path folder) throws IOException {
            try (Stream<Path> entries = Files.list(folder)) {
                return entries.count();
            }
        }

        String words() {
            return String.format(
                    Locale.ROOT,
                    "%6d min  %6.1f MB  %3d files  %3d threads",
                    minutes,
                    residentMegabytes,
                    files,
                    threads);
        }
    }

    @Test
    void staysTheSameForAWeek() throws Exception {
        List<Look> looks = soak("", "soak.txt", recordings -> {});

        staysFlat(looks, looks.size() / 10 + 1, 1);
    }

    /** While every second and finding goes to a broker and a series server, both real. */
    @Test
    @SuppressWarnings("try") // servers only have to be there
    void staysTheSameWhileItPublishes() throws Exception {
        TestServer.require("mosquitto");
        TestServer.require("victoria-metrics");
        int brokerPort = TestServer.freePort();
        int seriesPort = TestServer.freePort();
        try (TestServer broker = broker(brokerPort).start();
                TestServer series = series(seriesPort).start();
                Consumer consumer = new Consumer(brokerPort)) {
            consumer.subscribe();
            List<Look> looks = soak(
                    LoggerFolder.publish(brokerPort, seriesPort),
                    "soak-publishing.txt",
                    recordings -> awaitPublished(recordings, consumer));

            staysFlat(looks, looks.size() / 2, 4);
        }
    }

    private TestServer broker(int port) throws IOException {
        Path config = path.resolve("mosquitto.conf");
        Files.writeString(
                config,
                "listener " + port + " 127.0.0.1\nallow_anonymous true\nmax_inflight_messages 0\n"
                        + "max_queued_messages 0\n");
        return new TestServer(path.resolve("mosquitto.log"), port, List.of("mosquitto", "-c", config.toString()));
    }

    private TestServer series(int port) {
        return new TestServer(
                path.resolve("series.log"),
                port,
                List.of(
                        "victoria-metrics",
                        "-httpListenAddr=127.0.0.1:" + port,
                        "-storageDataPath=" + path.resolve("series"),
                        "-retentionPeriod=100y"));
    }

    /** Both have what was recorded, and the broker each second once at least; an outing's last second comes when it has ended. */
    private static void awaitPublished(Path recordings, Consumer consumer) throws Exception {
        long seconds = HOURS * 3_600L - (HOURS * 60L + MINUTES_AN_OUTING - 1) / MINUTES_AN_OUTING;
        long end = System.nanoTime() + PATIENCE.toNanos() * Math.max(1, HOURS / 4);
        while (consumer.positions("s").size() < seconds || waiting(recordings) > 10) {
            assertTrue(
                    System.nanoTime() < end,
                    () -> consumer.messages() + " messages came, " + seconds + " seconds wait");
            Thread.sleep(500);
        }
    }

    private static long waiting(Path recordings) throws IOException {
        JsonObject publish =
                new ControlClient(recordings).status().orElseThrow().getAsJsonObject("publish");
        JsonObject influx = publish.getAsJsonObject("influx");
        assertEquals(0, influx.get("refused").getAsLong());
        return influx.get("lag_items").getAsLong();
    }

    private interface BeforeTheEnd {
        void of(Path recordings) throws Exception;
    }

    private List<Look> soak(String more, String report, BeforeTheEnd beforeTheEnd) throws Exception {
        long minutes = HOURS * 60L;
        List<Look> looks = new ArrayList<>();
        int outings = 0;
        Path recordings;
        try (PseudoTerminal line = PseudoTerminal.open()) {
            LoggerFolder folder = LoggerFolder.at(path, line.portName(), LoggerFolder.DEVICE_CLOCK);
            Files.writeString(folder.config(), more, StandardOpenOption.APPEND);
            StartedDaemon logger =
                    StartedDaemon.start(path, "run", "--config", folder.config().toString());
            assertTrue(line.waitForReader(PATIENCE), logger.stderr());
            WeekOfPulls instrument = new WeekOfPulls(line);
            for (long minute = 0; minute < minutes; minute++) {
                if (minute % MINUTES_AN_OUTING == 0) {
                    instrument.restart(++outings);
                }
                instrument.seconds(60);
                if ((minute + 1) % Math.max(1, minutes / LOOKS) == 0) {
                    looks.add(Look.at(minute + 1, logger.pid()));
                }
            }
            assertTrue(line.waitUntilTaken(PATIENCE), logger.stderr());
            beforeTheEnd.of(folder.recordings());
            looks.add(Look.at(minutes, logger.pid()));
            logger.terminate();
            assertEquals(ENDED_BY_SIGTERM, logger.exitCode(), logger.stderr());
            recordings = folder.recordings();
        }
        Files.write(
                Path.of(System.getProperty("tautlog.root"), "logger", "target", report),
                looks.stream().map(Look::words).toList());
        lostNothing(recordings, outings, minutes);
        return looks;
    }

    /**
     * The second half against what was there at first.
     *
     * @param warm so many looks are the first
     * @param more files, and threads, that may be there later: a publisher opens what it reads at each look, and its client's threads
     *     come and go
     */
    private static void staysFlat(List<Look> looks, int warm, int more) {
        List<Look> early = looks.subList(0, warm);
        List<Look> late = looks.subList(looks.size() / 2, looks.size());
        double before =
                early.stream().mapToDouble(Look::residentMegabytes).max().orElseThrow();
        double after = late.stream().mapToDouble(Look::residentMegabytes).max().orElseThrow();
        assertTrue(after <= before + MORE_MEGABYTES, "resident " + before + " MB, later " + after + " MB");
        long files = early.stream().mapToLong(Look::files).max().orElseThrow();
        late.forEach(look -> assertTrue(look.files <= files + more, look.words()));
        long threads = early.stream().mapToLong(Look::threads).max().orElseThrow();
        late.forEach(look -> assertTrue(look.threads <= threads + more, look.words()));
    }

    private static void lostNothing(Path recordings, int outings, long minutes) throws IOException {
        long samples = 0;
        int stored = 0;
        for (Path file : files(recordings)) {
            try (Recording recording = Recording.open(file)) {
                for (Outing outing : recording.outings()) {
                    isWhole(recording, outing);
                    samples += outing.samples();
                    stored++;
                }
                assertEquals(List.of(), recording.verify().damages(), file.toString());
            }
        }
        assertEquals(outings, stored);
        assertEquals(minutes * 60 * WeekOfPulls.RATE, samples);
    }

    private static List<Path> files(Path recordings) throws IOException {
        try (Stream<Path> files = Files.list(recordings)) {
            return files.filter(file -> file.toString().endsWith(RecordingName.ENDING))
                    .toList();
        }
    }

    private static void isWhole(Recording recording, Outing outing) throws IOException {
        assertTrue(outing.closed(), "outing " + outing.index() + " is closed");
        long overloads = recording.findings(outing).stream()
                .filter(finding -> finding.kind().equals("overload"))
                .count();
        assertEquals(outing.samples() / (60L * WeekOfPulls.RATE), overloads, "one overload a minute");
    }
}
