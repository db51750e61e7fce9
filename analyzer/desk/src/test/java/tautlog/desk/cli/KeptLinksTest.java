package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.NotedLink;
import tautlog.recording.Recording;
import tautlog.recording.RecordingWriter;

/** {@code tautlog verify --against}: recordings against links that were kept elsewhere. */
class KeptLinksTest {
    @TempDir
    Path folder;

    private Path recording = Path.of("");
    private Path links = Path.of("");

    @BeforeEach
    void aRecordingAndTheLinkThatWasNotedOfIt() throws IOException {
        recording = folder.resolve("day.tautlog");
        outing(1, 0, 3_000);
        links = folder.resolve("last-links.txt");
        Files.writeString(links, "# a remark\n" + noted("day.tautlog") + "\n");
    }

    private void outing(int boot, long secondsLater, int newtons) throws IOException {
        try (RecordingWriter writer = RecordingWriter.open(recording, "winch-1")) {
            ShortDay.append(writer, boot, secondsLater, SampleDay.rigToml(), day -> day.hold(3, newtons));
        }
    }

    private String noted(String name) throws IOException {
        try (Recording open = Recording.open(recording)) {
            return new NotedLink(Instant.parse("2026-05-04T17:00:00Z"), name, open.lastLink()).line();
        }
    }

    private static JsonObject only(Desk run) {
        return JsonParser.parseString(run.out())
                .getAsJsonObject()
                .getAsJsonArray("kept_links")
                .get(0)
                .getAsJsonObject();
    }

    @Test
    void findsTheLinkOfARecordingThatOnlyGrewAndOfOneThatGotAnotherName() throws IOException {
        outing(2, 3_600, 3_000);
        Path renamed = Files.move(recording, folder.resolve("renamed.tautlog"));

        Desk text = Desk.run("verify", renamed, "--against", links);
        Desk json = Desk.run("verify", renamed, "--against", links, "--json");

        assertEquals(0, text.code(), text.err());
        assertTrue(text.out().contains("renamed.tautlog goes through it"), text.out());
        assertEquals(renamed.toString(), only(json).get("found_in").getAsString());
    }

    @Test
    void endsWithThreeWhenAWholeRecordingWasMadeAnew() throws IOException {
        Files.delete(recording);
        outing(1, 0, 2_000); // a smaller pull

        Desk text = Desk.run("verify", recording, "--against", links);
        Desk json = Desk.run("verify", recording, "--against", links, "--json");

        assertEquals(3, text.code());
        assertTrue(text.out().contains("day.tautlog: intact"), text.out());
        assertTrue(text.out().contains("NOT IN ITS CHAIN"), text.out());
        assertTrue(only(json).get("contradicted").getAsBoolean(), json.out());
        assertTrue(only(json).get("found_in").isJsonNull(), json.out());
    }

    @Test
    void saysWhichLinksItCouldNotLookAt() throws IOException {
        Files.writeString(links, noted("day.tautlog").replace("day", "other").replaceAll("..$", "00"));

        Desk run = Desk.run("verify", recording, "--against", links);

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("other.tautlog: not looked at"), run.out());
    }

    @Test
    void refusesATextWithoutLinks() throws IOException {
        Files.writeString(links, "# only a remark\n");

        Desk run = Desk.run("verify", recording, "--against", links);

        assertEquals(2, run.code());
        assertTrue(run.err().contains("no link stands in it"), run.err());
    }
}
