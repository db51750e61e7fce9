package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.analysis.GivenRecordings;
import tautlog.desk.progress.Progress;
import tautlog.desk.report.LeftOut;
import tautlog.rig.Rig;

/** What a history of use gives does not depend on by how many it was read, to the last bit. */
class SameByAnyWorkersTest {
    private static final int[] WORKERS = {1, 2, 3, 7};

    @TempDir
    Path folder;

    private List<Path> folders = List.of();

    @BeforeEach
    void writeRecordings() throws IOException {
        folders = MixedRecordings.write(folder);
    }

    /** Everything that a history gives. A record of doubles is equal only when all their bits are; the JSON shows each of them too. */
    private record Given(
            List<OutingUse> outings, String json, LeftOut leftOut, List<String> notes, Map<String, Rig> latestRigs) {}

    private Given given(int workers, Optional<Path> cache) throws IOException {
        UseHistory history = UseHistory.of(
                folders, new UseSettings(cache, "test", Optional.empty(), workers, Progress.SILENT, Instant::now));
        return new Given(
                history.outings(),
                UseJson.GSON.toJson(history.outings()),
                history.leftOut(),
                history.notes(),
                history.latestRigs());
    }

    @Test
    void byOneTwoThreeAndSeven() throws IOException {
        Given one = given(1, Optional.empty());

        assertFalse(one.leftOut().recordings().isEmpty());
        assertFalse(one.leftOut().outings().isEmpty());
        assertFalse(one.leftOut().blocks().isEmpty());
        assertFalse(one.notes().isEmpty());
        for (int workers : WORKERS) {
            assertEquals(one, given(workers, Optional.empty()), workers + " workers");
        }
    }

    /** The files of which nothing was left out: they need not be read again. */
    private List<Path> whole(LeftOut leftOut) throws IOException {
        Set<String> refused = Stream.concat(
                        leftOut.recordings().stream().map(LeftOut.OfRecording::file),
                        leftOut.outings().stream().map(LeftOut.OfOuting::file))
                .collect(Collectors.toSet());
        return GivenRecordings.in(folders).stream()
                .filter(file -> !refused.contains(file.toString()))
                .toList();
    }

    @Test
    void andFromWhatAnyOfThemRemembered() throws IOException {
        Given one = given(1, Optional.empty());
        List<Path> whole = whole(one.leftOut());
        assertTrue(whole.size() > 20, whole + " are few");
        Map<Path, byte[]> bytes = new LinkedHashMap<>();
        for (Path file : whole) {
            bytes.put(file, Files.readAllBytes(file));
        }

        for (int workers : WORKERS) {
            Optional<Path> cache = Optional.of(folder.resolve("cache-" + workers));
            assertEquals(one, given(workers, cache), workers + " workers remember");
            // of an outing that somebody copied while it went on, the whole may be remembered only now
            assertEquals(one, given(8 - workers, cache), (8 - workers) + " workers go on");
            for (Path file : whole) {
                Unseen.spoil(file); // reading it again would show
            }
            assertEquals(one, given(8 - workers, cache), "what " + workers + " workers remembered");
            for (Path file : whole) {
                Unseen.write(file, bytes.get(file));
            }
        }
    }
}
