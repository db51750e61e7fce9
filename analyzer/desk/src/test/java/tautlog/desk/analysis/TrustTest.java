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

    /** FINDINGS.md and the tally's definition: what was rejected is among what was lost. */
    @Test
    void doesNotLetRejectedAndLostFramesReadAsTwoLosses(@TempDir Path folder) throws IOException {
        Path recording =
                ShortDay.write(folder, "crc.tautlog", day -> day.tally(new Tally(Map.of("BAD_CRC", 13L), 13, 0, 0)));

        String page = Desk.run("report", recording).out().replaceAll("\\s+", " ");

        assertTrue(
                page.contains(
                        "13 frames lost on the line, 0 readings lost by the instrument itself. 13 frames came damaged"
                                + " and were rejected (13 BAD_CRC, bytes changed or lost on the way): they are among those lost"),
                page);
    }
}
