package tautlog.logger.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.recording.NotedLink;

class LastLinksTest {
    private static final NotedLink FIRST = noted("2026-05-04T17:00:00Z", "a_2026-05-04.tautlog", "00");
    private static final NotedLink SECOND = noted("2026-05-05T17:00:00Z", "a_2026-05-05.tautlog", "11");

    @TempDir
    Path folder;

    private static NotedLink noted(String at, String file, String hex) {
        return new NotedLink(Instant.parse(at), file, hex.repeat(32));
    }

    private List<String> lines() throws IOException {
        return Files.readAllLines(folder.resolve(LastLinks.NAME));
    }

    @Test
    void saysWhatItIsForAndGrowsDayByDay() throws IOException {
        new LastLinks(folder).add(List.of(FIRST));
        List<String> before = lines();
        new LastLinks(folder)
                .add(List.of(noted("2026-05-05T17:00:00Z", FIRST.file(), "00"), SECOND)); // the first is known

        assertTrue(before.get(0).startsWith("# "), before::toString);
        assertEquals(FIRST.line(), before.get(before.size() - 1));
        assertEquals(before, lines().subList(0, before.size()), "nothing is taken away");
        assertEquals(List.of(SECOND.line()), lines().subList(before.size(), lines().size()));
    }

    @Test
    void addsAnotherLinkOfTheSameRecording() throws IOException {
        new LastLinks(folder).add(List.of(FIRST));
        new LastLinks(folder).add(List.of(noted("2026-05-04T18:00:00Z", FIRST.file(), "22")));

        assertEquals(
                2, lines().stream().filter(line -> line.contains(FIRST.file())).count());
    }

    @Test
    void goesOnBehindALineThatWasTornWhenTheDriveWasPulled() throws IOException {
        Files.writeString(folder.resolve(LastLinks.NAME), FIRST.line().substring(0, 60));

        new LastLinks(folder).add(List.of(SECOND));

        assertEquals(List.of(FIRST.line().substring(0, 60), SECOND.line()), lines());
    }

    @Test
    void makesNoFileWithNothingToSay() throws IOException {
        new LastLinks(folder).add(List.of());

        assertFalse(Files.exists(folder.resolve(LastLinks.NAME)));
    }
}
