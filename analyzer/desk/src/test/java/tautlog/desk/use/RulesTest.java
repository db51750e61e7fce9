package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;

/**
 * What a pass finds in one and the same minute. Fails when that changes: then raise {@link UseCache#RULES}, so that nobody is shown what
 * was remembered under the old ones, and write down here what is found now.
 */
class RulesTest {
    @TempDir
    Path folder;

    @Test
    void aPassFindsUnderTheseRulesWhatItAlwaysFound() throws IOException {
        OutingUse use = UseHistory.of(List.of(SampleDay.write(folder)), UseAgainstSlowTest.settings(1))
                .outings()
                .get(0);
        OutingPlace place = new OutingPlace("w", "id", "f", 0);
        OutingUse anywhere = new OutingUse(
                place,
                use.start(),
                use.end(),
                use.samples(),
                use.nature(),
                use.opening(),
                use.meters(),
                use.coverage(),
                use.machine(),
                use.events(),
                use.damages());

        assertEquals(
                "9: 5376eb6eb232c4f392909a525d6e0975",
                UseCache.RULES + ": " + CacheFile.key(UseJson.GSON.toJson(anywhere)),
                () -> UseCache.RULES + ": " + CacheFile.key(UseJson.GSON.toJson(anywhere)));
    }
}
