package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.control.StatusFile;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.recorder.InterruptedOutings;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.RecordingException;

/**
 * Power cuts: the packaged logger runs on a folder whose writes and flushes are written down; the folder is then made as it
 * would be after a cut at many moments ({@link CutDisk}). In each: every file opens and verifies, holds bit for bit all
 * that was sent more than one second before the cut and all outings before, and the next start finishes what was cut off. The
 * next run goes on from one of these folders. {@code -Dtautlog.cuts=100} is a full run; what each left stands in {@code target/cuts.txt}.
 */
@Timeout(1_800)
class PowerCutIT {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final int CUTS = Integer.getInteger("tautlog.cuts", 24);
    private static final int CUTS_A_RUN = 12;
    private static final long FRAME_MILLIS = 50;
    private static final long RUN_MILLIS = 4_500;
    private static final long AFTER_MILLIS = 300;
    private static final int ENDED_BY_SIGTERM = 128 + 15;
    private static final String WINCH = "upper-landing";

    private final Random random = new Random(20_260_504);
    private final List<String> lines = new ArrayList<>();
    /** The counts of every outing that is in the folder from which the next run goes on. */
    private List<List<Integer>> before = new ArrayList<>();

    private int boot = 100;

    @TempDir
    Path path;

    @AfterEach
    void leavesNoLoggerBehind() {
        StartedDaemon.killAll();
    }

    @Test
    void losesAtMostTheLastSecondWhenPowerIsCutAtAnyMoment() throws Exception {
        Path layer = WrittenDown.compile(path);
        Path start = Files.createDirectory(path.resolve("empty"));
        for (int run = 0; run * CUTS_A_RUN < CUTS; run++) {
            start = cutOneRun(layer, start, run, Math.min(CUTS_A_RUN, CUTS - run * CUTS_A_RUN));
        }
        assertEquals(CUTS, lines.size());
        Files.write(Path.of(System.getProperty("tautlog.root"), "logger", "target", "cuts.txt"), lines);
    }

    /** One run of the logger and what the cuts left of it; the folder of the last cut. */
    private Path cutOneRun(Path layer, Path start, int run, int cuts) throws Exception {
        Path folder = Files.createDirectory(path.resolve("run" + run));
        Path journal = folder.resolve("writes.journal");
        Recorded recorded = record(layer, folder, start, journal, run % 3);
        WrittenDown writes = WrittenDown.read(journal);
        assertTrue(
                writes.changes().stream().anyMatch(change -> change.what() == WrittenDown.What.FLUSHED),
                "the layer saw a flush");
        Path left = start;
        List<Integer> kept = List.of();
        for (int cut = 0; cut < cuts; cut++) {
            left = Files.createDirectory(folder.resolve("cut" + cut));
            long nanos = recorded.moment(
                    random, cut == cuts - 1 ? 0.75 : 0); // the next run is to have something to go on from
            new CutDisk(start, random).cut(writes, nanos, left);
            kept = check(left, recorded, nanos, "run " + run + " cut " + cut);
        }
        if (!kept.isEmpty() || outings(left) > before.size()) {
            before.add(kept);
        }
        return left;
    }

    private record Recorded(
            List<Integer> sent, List<Long> sentNanos, int samplesAFrameTime, long startNanos, long endNanos) {
        /** @param from the first, as a part of the run */
        long moment(Random random, double from) {
            return startNanos + (long) ((from + (1 - from) * random.nextDouble()) * (endNanos - startNanos));
        }

        /** How many samples were sent more than a second before. */
        int olderThanOneSecond(long nanos) {
            return samplesAFrameTime
                    * (int) sentNanos.stream()
                            .filter(sent -> nanos - sent > TimeUnit.SECONDS.toNanos(1))
                            .count();
        }
    }

    /** Kinds: small rows and no end, blocks sealed and no end, closed in order. */
    private Recorded record(Path layer, Path folder, Path start, Path journal, int kind) throws Exception {
        SmallInstrument instrument = new SmallInstrument(boot++);
        int samplesAFrameTime = kind == 1 ? 500 : 25;
        try (PseudoTerminal line = PseudoTerminal.open()) {
            LoggerFolder at = LoggerFolder.at(folder, line.portName(), LoggerFolder.DEVICE_CLOCK);
            copy(start, Files.createDirectory(at.recordings()));
            long startNanos = System.nanoTime();
            StartedDaemon logger = StartedDaemon.startIn(
                    WrittenDown.environment(layer, at.recordings(), journal, folder.resolve("healthy")),
                    folder,
                    "run",
                    "--config",
                    at.config().toString());
            assertTrue(line.waitForReader(PATIENCE), logger.stderr());
            List<Long> sentNanos = send(instrument, line, samplesAFrameTime);
            if (kind == 2) {
                logger.terminate();
                assertEquals(ENDED_BY_SIGTERM, logger.exitCode(), logger.stderr());
            } else {
                TimeUnit.MILLISECONDS.sleep(AFTER_MILLIS);
                logger.kill();
            }
            return new Recorded(instrument.sent(), sentNanos, samplesAFrameTime, startNanos, System.nanoTime());
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        for (Path file : list(from)) {
            Files.copy(file, to.resolve(file.getFileName()));
        }
    }

    private static List<Path> list(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.toList();
        }
    }

    private static List<Long> send(SmallInstrument instrument, PseudoTerminal line, int samplesAFrameTime)
            throws Exception {
        List<Long> sentNanos = new ArrayList<>();
        long start = System.nanoTime();
        while (System.nanoTime() - start < TimeUnit.MILLISECONDS.toNanos(RUN_MILLIS)) {
            boolean slack = instrument.sent().size() % 1_000 < 500;
            line.write(instrument.hold(slack ? 0 : 2_500_000, samplesAFrameTime).take());
            sentNanos.add(System.nanoTime());
            long due = start + TimeUnit.MILLISECONDS.toNanos(FRAME_MILLIS * sentNanos.size());
            TimeUnit.NANOSECONDS.sleep(due - System.nanoTime());
        }
        return sentNanos;
    }

    private static Path file(Path folder) {
        return folder.resolve(WINCH + "_2026-05-04.tautlog");
    }

    private static int outings(Path folder) throws IOException {
        return Files.exists(file(folder)) ? StoredOuting.readAll(file(folder)).size() : 0;
    }

    /** What is stored of the run's own outing. */
    private List<Integer> check(Path left, Recorded recorded, long nanos, String name) throws Exception {
        int mustHave = recorded.olderThanOneSecond(nanos);
        new StatusFile(left).read(); // none, or one that can be read
        List<StoredOuting> read = readIfMade(file(left), mustHave, name);
        assertTrue(read.size() >= before.size(), name + ": an outing before it is gone");
        for (int outing = 0; outing < before.size(); outing++) {
            assertEquals(before.get(outing), read.get(outing).counts(), name + ": outing " + outing);
        }
        List<Integer> stored =
                read.size() > before.size() ? read.get(before.size()).counts() : List.of();
        assertTrue(stored.size() >= mustHave, name + ": " + stored.size() + " stored, older than 1 s: " + mustHave);
        assertEquals(recorded.sent().subList(0, stored.size()), stored, name);
        isFinishedAtTheNextStart(left, read.size(), stored, name);
        lines.add(name + ": sent " + recorded.sent().size() + " in all, older than 1 s " + mustHave + ", stored "
                + stored.size() + ", outings " + read.size() + ", verified");
        return stored;
    }

    private static List<StoredOuting> readIfMade(Path file, int mustHave, String name) throws IOException {
        try {
            return Files.exists(file) ? StoredOuting.readAll(file) : List.of();
        } catch (RecordingException unmade) {
            assertEquals(0, mustHave, name + ": " + unmade.getMessage());
            assertTrue(String.valueOf(unmade.getMessage()).contains("is empty"), name + ": " + unmade.getMessage());
            return List.of();
        }
    }

    private void isFinishedAtTheNextStart(Path left, int outings, List<Integer> stored, String name) throws Exception {
        Path next = Files.createDirectory(left.resolveSibling(left.getFileName() + "-next"));
        copy(left, next);
        RecordingFiles files = new RecordingFiles(next, WINCH);
        new InterruptedOutings(files)
                .finishAll(files.dated(TimeUnit.SECONDS.toMicros(
                        LocalDate.of(2026, 5, 4).atStartOfDay().toEpochSecond(ZoneOffset.UTC))));
        List<StoredOuting> finished = Files.exists(file(next)) ? StoredOuting.readAll(file(next)) : List.of();
        assertEquals(outings, finished.size(), name);
        assertTrue(finished.stream().allMatch(outing -> outing.outing().closed()), name + ": finished");
        if (outings > before.size()) {
            assertEquals(stored, finished.get(before.size()).counts(), name + ": finished");
        }
    }
}
