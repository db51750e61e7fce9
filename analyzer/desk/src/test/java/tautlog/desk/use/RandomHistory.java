package tautlog.desk.use;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;

/** Recordings of random outings of two winches over some weeks: restarts, copies, copies taken at midday, outings that overlap. */
final class RandomHistory {
    private static final long FIRST_MICROS = 1_772_442_000_000_000L;
    private static final long HOUR = 3_600_000_000L;
    private static final String RIG = """
            schema = 1
            [winch]
            name = "any"
            rated_pull = "40 kN"
            [[gear]]
            id = "line"
            kind = "web"
            wll = "12 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "line" } ]
            """;

    private final Path folder;
    private final Random random;
    private final List<PlannedOuting> outings = new ArrayList<>();
    private long boot;

    private RandomHistory(Path folder, long seed) {
        this.folder = folder;
        random = new Random(seed);
    }

    /** Writes into {@code folder}, copies into the folders {@code copies} and {@code noon} of it; the outings that there are. */
    static List<PlannedOuting> write(Path folder, long seed) throws IOException {
        RandomHistory history = new RandomHistory(folder, seed);
        Files.createDirectories(folder.resolve("copies"));
        Files.createDirectories(folder.resolve("noon"));
        int days = 1 + history.random.nextInt(4);
        for (int day = 0; day < days; day++) {
            history.day(history.random.nextBoolean() ? "upper" : "lowest", FIRST_MICROS + day * 240 * HOUR);
        }
        return history.outings;
    }

    /** One file, now and then a second one of the same winch in the same time. */
    private void day(String winch, long startMicros) throws IOException {
        file(winch + "_" + startMicros, winch, startMicros);
        if (random.nextInt(3) == 0) {
            file(winch + "_" + startMicros + "_2", winch, startMicros + random.nextInt(40) * 1_000_000L);
        }
    }

    private void file(String name, String winch, long startMicros) throws IOException {
        Path file = folder.resolve(name + ".tautlog");
        int count = 1 + random.nextInt(3);
        long start = startMicros;
        for (int i = 0; i < count; i++) {
            PlannedOuting plan = PlannedOuting.random(random, winch, ++boot, start);
            outings.add(plan);
            start += plan.lastTick() + 1_000_000 + random.nextInt(3) * HOUR;
            append(file, plan);
        }
        if (random.nextInt(3) == 0) {
            Files.copy(file, folder.resolve("copies").resolve(file.getFileName()));
        }
    }

    private void append(Path file, PlannedOuting plan) throws RecordingException {
        int copyAt = random.nextInt(3) == 0 ? 1 + random.nextInt(plan.frames().size()) : -1;
        boolean power = random.nextBoolean();
        try (RecordingWriter recording = RecordingWriter.open(file, plan.winch())) {
            OutingWriter outing = recording.begin(new OutingStart(
                    plan.instrument(),
                    RIG,
                    CellCalibration.written(Calibration.of("0", "1")),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            plan.write(outing, index -> {
                if (index == copyAt) {
                    outing.commit();
                    copyAtNoon(file);
                }
            });
            if (power) {
                outing.end();
            }
            outing.commit();
        }
    }

    private void copyAtNoon(Path file) {
        try {
            for (String ending : List.of("", "-wal")) {
                Path part = file.resolveSibling(file.getFileName() + ending);
                Path copy = folder.resolve("noon").resolve(part.getFileName());
                Files.deleteIfExists(copy);
                if (Files.exists(part)) {
                    Files.copy(part, copy);
                }
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Those of the folders that hold a recording, in random order. */
    static List<Path> folders(Path folder, long seed) throws IOException {
        List<Path> folders = new ArrayList<>();
        for (Path one : List.of(folder, folder.resolve("copies"), folder.resolve("noon"))) {
            try (var files = Files.list(one)) {
                if (files.anyMatch(file -> file.toString().endsWith(".tautlog"))) {
                    folders.add(one);
                }
            }
        }
        java.util.Collections.shuffle(folders, new Random(seed));
        return folders;
    }
}
