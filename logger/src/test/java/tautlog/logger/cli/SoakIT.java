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
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingName;

/**
 * The packaged logger for a long time at 1,000 samples a second, as fast as it takes them, with an outing every ten hours:
 * memory, files and threads stay what they were after the first tenth, and nothing is lost. {@code -Dtautlog.soak.hours=168} is a
 * full run, a week; what was seen stands in {@code target/soak.txt}.
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
        long minutes = HOURS * 60L;
        List<Look> looks = new ArrayList<>();
        int outings = 0;
        Path recordings;
        try (PseudoTerminal line = PseudoTerminal.open()) {
            LoggerFolder folder = LoggerFolder.at(path, line.portName(), LoggerFolder.DEVICE_CLOCK);
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
            logger.terminate();
            assertEquals(ENDED_BY_SIGTERM, logger.exitCode(), logger.stderr());
            recordings = folder.recordings();
        }
        Files.write(
                Path.of(System.getProperty("tautlog.root"), "logger", "target", "soak.txt"),
                looks.stream().map(Look::words).toList());
        staysFlat(looks);
        lostNothing(recordings, outings, minutes);
    }

    private static void staysFlat(List<Look> looks) {
        List<Look> early = looks.subList(0, looks.size() / 10 + 1);
        List<Look> late = looks.subList(looks.size() / 2, looks.size());
        double before =
                early.stream().mapToDouble(Look::residentMegabytes).max().orElseThrow();
        double after = late.stream().mapToDouble(Look::residentMegabytes).max().orElseThrow();
        assertTrue(after <= before + MORE_MEGABYTES, "resident " + before + " MB, later " + after + " MB");
        long files = early.stream().mapToLong(Look::files).max().orElseThrow();
        late.forEach(look -> assertTrue(look.files <= files + 1, look.words()));
        long threads = early.stream().mapToLong(Look::threads).max().orElseThrow();
        late.forEach(look -> assertTrue(look.threads <= threads + 1, look.words()));
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
