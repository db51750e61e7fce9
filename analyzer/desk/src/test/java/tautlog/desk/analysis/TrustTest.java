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

    @Test
    void saysHowTheZeroWasMovedAndThatItIsProven(@TempDir Path folder) throws IOException {
        // given 10 s of slack at 50 N after a pull, the zero moved there
        Path recording = ShortDay.write(folder, "moved.tautlog", day -> {
            day.hold(1, 0);
            day.hold(2, 5_000);
            day.hold(17, 50);
            day.zero(50);
            day.hold(1, 50);
        });

        String json = Desk.run("report", recording, "--json").out().replaceAll("\\s", "");
        String page = Desk.run("report", recording).out().replaceAll("\\s+", " ");

        assertTrue(
                json.contains(
                        "\"zero\":{\"proven\":true,\"unproven_outings\":0,\"moves\":1,\"greatest_shift_n\":50.0}"),
                json);
        assertTrue(page.contains("The zero was moved 1 time in slack, at most by 0.05 kN."), page);
    }

    @Test
    void saysThatTheZeroIsUnproven(@TempDir Path folder) throws IOException {
        // given slack before the pull only
        Path recording = ShortDay.write(folder, "unproven.tautlog", day -> {
            day.hold(30, 50);
            day.hold(2, 5_000);
        });

        String json = Desk.run("report", recording, "--json").out().replaceAll("\\s", "");
        String page = Desk.run("report", recording).out().replaceAll("\\s+", " ");

        assertTrue(
                json.contains(
                        "\"zero\":{\"proven\":false,\"unproven_outings\":1,\"moves\":0,\"greatest_shift_n\":0.0}"),
                json);
        assertTrue(page.contains("ZERO UNPROVEN in 1 of 1 outings"), page);
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
