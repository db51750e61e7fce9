package tautlog.desk.use;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.desk.fixtures.SmallSeason;
import tautlog.sample.Calibration;

/**
 * Folders with everything that a history of use has an answer to: a small season, random outings, copies, overlaps, one file that is no
 * recording, one whose rig cannot be read, one with a damaged block. All were written long ago, so that they are remembered.
 */
final class MixedRecordings {
    private static final FileTime LONG_AGO = FileTime.from(Instant.parse("2026-05-05T00:00:00Z"));
    private static final long RANDOM_OUTINGS = 8;
    private static final long HISTORY_SEED = 3;

    private MixedRecordings() {}

    /** Writes them into {@code folder}; the folders to give. */
    static List<Path> write(Path folder) throws IOException {
        Path landing = Files.createDirectory(folder.resolve("landing"));
        List<Path> season = SmallSeason.write(landing);
        for (long seed = 0; seed < RANDOM_OUTINGS; seed++) {
            RandomOuting.write(landing, seed);
        }
        Files.write(landing.resolve("no-recording.tautlog"), "nonsense".getBytes(UTF_8));
        CellCalibration calibration = CellCalibration.written(Calibration.of("0", "1"));
        SampleDay.write(landing, "no-rig.tautlog", 2, 7_200, "schema = 1\n", calibration);
        damage(ShortDay.write(landing, "damaged.tautlog", day -> day.hold(60, 3_000)));
        Path copies = Files.createDirectory(folder.resolve("copies-of-the-landing"));
        for (Path file : season.subList(0, 3)) {
            Files.copy(file, copies.resolve(file.getFileName()));
        }
        Path history = Files.createDirectory(folder.resolve("history"));
        RandomHistory.write(history, HISTORY_SEED);
        List<Path> folders = new ArrayList<>(List.of(landing, copies));
        folders.addAll(RandomHistory.folders(history, HISTORY_SEED));
        age(folders);
        return folders;
    }

    private static void damage(Path recording) throws IOException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + recording)) {
            connection
                    .createStatement()
                    .executeUpdate("UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 2 AND span ="
                            + " (SELECT min(span) FROM evidence WHERE kind = 2)");
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    static void age(List<Path> folders) throws IOException {
        for (Path folder : folders) {
            try (var files = Files.list(folder)) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    Files.setLastModifiedTime(file, LONG_AGO);
                }
            }
        }
    }
}
