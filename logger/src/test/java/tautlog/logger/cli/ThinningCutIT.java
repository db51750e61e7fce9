package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.cli.OldRecordings.Told;
import tautlog.logger.cli.WrittenDown.Change;
import tautlog.logger.cli.WrittenDown.What;
import tautlog.logger.recorder.WrittenEvents;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.Thinned;
import tautlog.recording.Thinner;
import tautlog.recording.Verification;

/**
 * Power cuts while a recording is thinned: another process thins it, its writes and flushes are written down, and the folder is made as it
 * would be after a cut ({@link CutDisk}), at random and just before and after each flush and change of a name. In each: the
 * recording stands under its name, verifies, and is either as before or thinned as it should be; the next thinning completes it.
 */
@Timeout(300)
class ThinningCutIT {
    private static final int SAMPLES = 40_000;
    private static final int RANDOM_CUTS = 16;
    private static final String DAY = "2026-04-02";

    @TempDir
    Path path;

    /** The process that thins: {@code file}. */
    static final class ThinOnce {
        private ThinOnce() {}

        public static void main(String[] arguments) throws IOException {
            thin(Path.of(arguments[0]));
        }
    }

    private static Thinned thin(Path file) throws IOException {
        return Thinner.thin(file, Long.MAX_VALUE, Long.MAX_VALUE, OptionalLong.of(1_778_000_000_000_000L));
    }

    /** What a reader finds in each outing. */
    private record Found(List<List<String>> evidence, List<Boolean> thinned) {
        static Found in(Path file) throws IOException {
            List<List<String>> evidence = new ArrayList<>();
            List<Boolean> thinned = new ArrayList<>();
            try (Recording recording = Recording.open(file)) {
                Verification verified = recording.verify();
                assertTrue(verified.isIntact(), () -> verified.damages() + " " + verified.lost());
                for (Outing outing : recording.outings()) {
                    WrittenEvents events = new WrittenEvents();
                    assertEquals(List.of(), recording.replay(outing, events));
                    evidence.add(events.lines());
                    thinned.add(outing.thinned());
                }
            }
            return new Found(evidence, thinned);
        }
    }

    @Test
    void leavesTheWholeRecordingOrTheThinnedOneWheneverPowerIsCut() throws Exception {
        // given
        Path layer = WrittenDown.compile(path);
        Path start = Files.createDirectory(path.resolve("start"));
        Path file = OldRecordings.write(start, DAY, SAMPLES, Told.NOTHING, Told.A_SHOCK, Told.NOTHING);
        Found whole = Found.in(file);
        WrittenDown writes = thinElsewhere(layer, start);
        Random random = new Random(20_261_127);

        // when, then
        int thinned = 0;
        int cuts = 0;
        for (long nanos : moments(writes, random)) {
            Path left = Files.createDirectory(path.resolve("cut" + cuts++));
            new CutDisk(start, random).cut(writes, nanos, left);
            thinned += check(left.resolve(file.getFileName()), whole, "cut " + cuts);
        }
        assertTrue(thinned > 0 && thinned < cuts, thinned + " of " + cuts + " cuts left the thinned one");
    }

    private WrittenDown thinElsewhere(Path layer, Path start) throws Exception {
        Path work = Files.createDirectory(path.resolve("work"));
        Path file;
        try (var files = Files.list(start)) {
            file = files.findFirst().orElseThrow();
        }
        Path copy = Files.copy(file, work.resolve(file.getFileName()));
        Path journal = path.resolve("writes.journal");
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        ThinOnce.class.getName(),
                        copy.toString())
                .redirectErrorStream(true)
                .redirectOutput(path.resolve("said.txt").toFile());
        builder.environment().putAll(WrittenDown.environment(layer, work, journal, path.resolve("healthy")));
        assertEquals(0, builder.start().waitFor(), () -> said());
        assertEquals(List.of(true, false, true), Found.in(copy).thinned());
        return WrittenDown.read(journal);
    }

    private String said() {
        try {
            return Files.readString(path.resolve("said.txt"));
        } catch (IOException unread) {
            return String.valueOf(unread.getMessage());
        }
    }

    private static TreeSet<Long> moments(WrittenDown writes, Random random) {
        List<Change> changes = writes.changes();
        TreeSet<Long> moments = new TreeSet<>();
        for (Change change : changes) {
            if (change.what() != What.WROTE && change.what() != What.CUT_TO) {
                moments.add(change.nanos() - 1);
                moments.add(change.nanos());
            }
        }
        assertTrue(changes.stream().anyMatch(change -> change.what() == What.RENAMED), "the layer saw a new name");
        assertTrue(changes.stream().anyMatch(change -> change.what() == What.FOLDER_FLUSHED), "and the folder flushed");
        long first = changes.get(0).nanos();
        long last = changes.get(changes.size() - 1).nanos();
        for (int i = 0; i < RANDOM_CUTS; i++) {
            moments.add(first + (long) (random.nextDouble() * (last - first)));
        }
        return moments;
    }

    /** 1 when the thinned one is there. */
    private static int check(Path file, Found whole, String name) throws IOException {
        assertTrue(Files.exists(file), name);
        Found found = Found.in(file);
        boolean isThinned = found.thinned().get(0);
        assertEquals(List.of(isThinned, false, isThinned), found.thinned(), name);
        assertEquals(isThinned ? withoutSamples(whole) : whole.evidence(), found.evidence(), name);

        assertEquals(isThinned ? 0 : 2, thin(file).outings(), name);
        assertEquals(withoutSamples(whole), Found.in(file).evidence(), name);
        return isThinned ? 1 : 0;
    }

    private static List<List<String>> withoutSamples(Found whole) {
        List<List<String>> evidence = new ArrayList<>();
        for (int outing = 0; outing < whole.evidence().size(); outing++) {
            boolean goes = outing != 1;
            evidence.add(whole.evidence().get(outing).stream()
                    .filter(line -> !(goes && line.startsWith("tension ")))
                    .toList());
        }
        return evidence;
    }
}
