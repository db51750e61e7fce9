package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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

    @Test
    void andFromWhatAnyOfThemRemembered() throws IOException {
        Given one = given(1, Optional.empty());

        for (int workers : WORKERS) {
            Optional<Path> cache = Optional.of(folder.resolve("cache-" + workers));
            assertEquals(one, given(workers, cache), workers + " workers remember");
            assertEquals(one, given(8 - workers, cache), "what " + workers + " workers remembered");
        }
    }
}
