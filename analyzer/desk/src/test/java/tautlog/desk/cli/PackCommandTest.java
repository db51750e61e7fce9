package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;

class PackCommandTest {
    @TempDir
    Path folder;

    private Path recordings() throws IOException {
        Path recordings = Files.createDirectory(folder.resolve("recordings"));
        SampleDay.write(recordings);
        SampleDay.write(recordings, "upper-landing_2026-05-05.tautlog", 2, 86_400);
        ShortDay.write(recordings, "far-side.tautlog", day -> {
            day.hold(2, 500);
            day.hold(2, 30_000);
        });
        return recordings;
    }

    /** What every command says of the recordings, byte for byte. */
    private Map<String, Object> saidOf(Path recordings) throws IOException {
        Map<String, Object> said = new LinkedHashMap<>();
        for (List<String> command : List.of(
                List.of("report"),
                List.of("report", "--json"),
                List.of("report", "--hookup", "straight", "--json"),
                List.of("hours", "--json"),
                List.of("verify"),
                List.of("verify", "--json"),
                List.of("incident", "--at", "2026-05-04T07:01:00Z", "--json"))) {
            Object[] words =
                    Stream.concat(command.stream(), Stream.of(recordings)).toArray();
            Desk run = Desk.run(words);
            said.put(String.join(" ", command), run);
            assertTrue(!run.out().isBlank(), command + run.err());
        }
        for (List<String> export : List.of(List.of("--csv"), List.of("--seconds", "--csv"))) {
            Path table = folder.resolve("table.csv");
            Object[] words = Stream.of(Stream.of("export"), export.stream(), Stream.of(table, recordings))
                    .flatMap(word -> word)
                    .toArray();
            assertEquals(0, Desk.run(words).code());
            said.put("export " + export, Files.readString(table));
        }
        return said;
    }

    @Test
    void whatEveryCommandSaysStaysTheSameByteForByte() throws IOException {
        Path recordings = recordings();
        Map<String, Object> before = saidOf(recordings);

        Desk run = Desk.run("pack", recordings);

        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("verified, every link as before"), run.out());
        assertTrue(run.out().contains("3 recordings: "), run.out());
        Map<String, Object> after = saidOf(recordings);
        before.forEach((command, said) -> assertEquals(said, after.get(command), command));
        assertTrue(Desk.run("pack", recordings).out().contains("nothing to pack"));
    }

    /** A packed copy beside the whole one is the same outing: nothing is added up twice, remembered or not. */
    @Test
    void aPackedCopyBesideTheWholeOneCountsOnce() throws IOException {
        Path whole = SampleDay.write(folder);
        Path cache = folder.resolve("cache");
        String alone =
                Desk.remembering("hours", "--json", "--cache", cache, whole).out();
        Path copies = Files.createDirectory(folder.resolve("copies"));
        Files.copy(whole, copies.resolve("a.tautlog"));
        Files.copy(whole, copies.resolve("b.tautlog"));
        assertEquals(0, Desk.run("pack", copies.resolve("b.tautlog")).code());
        assertNotEquals(Files.size(copies.resolve("a.tautlog")), Files.size(copies.resolve("b.tautlog")));

        for (int run = 0; run < 2; run++) {
            Desk both = Desk.remembering("hours", "--json", "--cache", cache, copies);
            assertEquals(0, both.code(), both.err());
            assertEquals(figures(alone), figures(both.out()));
        }
        assertTrue(Desk.run("report", copies).out().replaceAll("\\s+", " ").contains("counted once"));
    }

    private static String figures(String json) {
        return com.google.gson.JsonParser.parseString(json)
                .getAsJsonObject()
                .getAsJsonArray("seasons")
                .toString();
    }

    @Test
    void namesWhatItLeavesAsItIsAndPacksTheRest() throws IOException {
        Path recordings = recordings();
        Path live = recordings.resolve("live.tautlog");
        Files.writeString(recordings.resolve("torn.tautlog"), "no recording");
        byte[] torn = Files.readAllBytes(recordings.resolve("torn.tautlog"));
        try (RecordingWriter writer = RecordingWriter.open(live, "live")) {
            ShortDay day = ShortDay.begun(writer, 4);
            day.hold(3, 100);
            day.commit();

            Desk run = Desk.run("pack", recordings);

            assertEquals(3, run.code());
            assertTrue(run.err().contains("live.tautlog: is being written"), run.err());
            assertTrue(run.err().contains("torn.tautlog: is no recording"), run.err());
            assertTrue(run.out().contains("3 recordings: "), run.out());
            day.end();
        }
        assertArrayEquals(torn, Files.readAllBytes(recordings.resolve("torn.tautlog")));
        try (Stream<Path> files = Files.list(recordings)) {
            assertTrue(files.allMatch(file -> file.toString().endsWith(".tautlog")));
        }
        assertEquals(0, Desk.run("verify", live).code());
    }

    @Test
    void namesAPackedRecordingThatWasDamagedSince() throws Exception {
        Path file = SampleDay.write(folder);
        assertEquals(0, Desk.run("pack", file).code());
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("UPDATE evidence SET block = substr(block, 1, 40) || x'00' || substr(block, 42)"
                    + " WHERE seq = (SELECT max(seq) FROM evidence WHERE kind = 2)");
        }

        Desk run = Desk.run("pack", file);

        assertEquals(Desk.run("verify", file).code(), run.code());
        assertEquals(3, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("is packed already, and is damaged"), run.err());
    }
}
