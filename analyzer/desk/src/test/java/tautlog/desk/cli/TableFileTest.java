package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.progress.Kept;

class TableFileTest {
    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatStoodUnderItsNameStaysUntilTheTableIsWhole() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        TableFile table = TableFile.of(file);
        Files.writeString(table.written(), "after");
        assertEquals("before", Files.readString(file));

        table.whole();

        assertEquals("after", Files.readString(file));
        assertEquals(List.of("t.csv"), names());
    }

    @Test
    void nothingIsLeftOfATableThatIsNotWhole() throws IOException {
        Path file = folder.resolve("t.csv");
        TableFile table = TableFile.of(file);
        assertEquals(Kept.NOTHING, table.discard(), "not begun");
        Files.writeString(table.written(), "aft");

        assertEquals(Kept.NOTHING, table.discard());

        assertEquals(List.of(), names());
    }

    /** What a link points to may be anything; taking its place would break it. */
    @Test
    void aLinkIsWrittenThroughAndThenNotTakenBack() throws IOException {
        Path file = Files.writeString(folder.resolve("t.csv"), "before");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), file);
        TableFile table = TableFile.of(link);
        Files.writeString(table.written(), "aft");

        assertEquals(Kept.PART_OF_TABLE, table.discard());
        table.whole();

        assertTrue(Files.isSymbolicLink(link));
        assertEquals("aft", Files.readString(file));
    }

    @Test
    void anExportThatFailsLeavesWhatWasThere() throws IOException {
        Path table = Files.writeString(folder.resolve("t.csv"), "before");
        Path none = folder.resolve("none.tautlog");

        Desk run = Desk.run("export", none, "--csv", table);

        assertEquals(3, run.code(), run.err());
        assertEquals("before", Files.readString(table));
        assertEquals(List.of("t.csv"), names());
    }

    @Test
    void aDeviceTakesATable() throws IOException {
        Path recording = SampleDay.write(folder);

        Desk run = Desk.run("export", recording, "--csv", "/dev/null", "--seconds");

        assertEquals(0, run.code(), run.err());
        assertFalse(Files.isRegularFile(Path.of("/dev/null")));
        assertFalse(Files.exists(Path.of("/dev/null-part")));
    }
}
