package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.Tally;

class TrustTest {
    @Test
    void tellsHeldAndRepeatedFrames(@TempDir Path folder) throws IOException {
        Path recording = ShortDay.write(folder, "held.tautlog", day -> day.tally(new Tally(Map.of(), 0, 3, 4)));

        String json = Desk.run("report", recording, "--json").out().replaceAll("\\s", "");
        String page = Desk.run("report", recording).out().replaceAll("\\s+", " ");

        assertTrue(json.contains("\"held_frames\":4,\"repeated_frames\":3"), json);
        assertTrue(page.contains("4 frames lost because"), page);
        assertTrue(page.contains("3 frames dropped as repeated"), page);
    }
}
