package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.fixtures.EvidenceLog;
import tautlog.recording.RecordingException.Scope;

class RecordingFileTest {
    @TempDir
    Path folder;

    private void assertRefused(Path file, String... words) throws IOException {
        boolean existed = Files.isRegularFile(file);
        byte[] before = existed ? Files.readAllBytes(file) : new byte[0];
        for (RecordingException e : List.of(
                assertThrows(RecordingException.class, () -> Recording.open(file)),
                assertThrows(RecordingException.class, () -> RecordingWriter.open(file, "winch-1")))) {
            String message = String.valueOf(e.getMessage());
            assertTrue(message.startsWith(file + ": "), message);
            for (String word : words) {
                assertTrue(message.contains(word), message);
            }
        }
        if (existed) {
            assertArrayEquals(before, Files.readAllBytes(file));
        }
    }

    private Path recording() throws IOException {
        Path file = folder.resolve("r.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 20).tell(outing);
            outing.commit();
        }
        return file;
    }

    private void sql(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.createStatement().execute(sql);
        }
    }

    @Test
    void refusesAFolder() throws IOException {
        assertRefused(folder, "is a folder");
    }

    @Test
    void refusesAFileOfAnotherKindAndLeavesItAlone() throws IOException {
        Path text = folder.resolve("notes.txt");
        Files.writeString(text, "not a recording, ".repeat(200));
        assertRefused(text, "is no recording", "Name a .tautlog file");
    }

    @Test
    void refusesAnSqliteFileOfAnotherProgramAndLeavesItAlone() throws Exception {
        Path other = folder.resolve("other.db");
        sql(other, "CREATE TABLE notes (text)");
        assertRefused(other, "another program");
    }

    @Test
    void refusesANewerFormatAndLeavesItAlone() throws Exception {
        Path file = recording();
        sql(file, "PRAGMA user_version = 5");
        assertRefused(file, "format version 5", "reads up to 4", "newer version");
    }

    /** Half a span in tail rows, then sealed: what they leave free is less than what was written for them. */
    @Test
    void sealedBlocksTakeThePagesOfTheirTailRows() throws Exception {
        Path file = folder.resolve("pages.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            int[] counts = new java.util.Random(1).ints(250, -99, 99).toArray();
            for (int i = 0; i < 30; i++) {
                outing.tension(250L * i, 500_000L * i, 0, counts, 0, 250);
                outing.commit();
            }
            outing.end();
            outing.commit();
        }
        try (Connection connection = RecordingFile.openForReading(file)) {
            long pages = RecordingFile.pragma(connection, "page_count");
            long free = RecordingFile.pragma(connection, "freelist_count");
            assertTrue(free < pages / 4, free + " free pages of " + pages);
        }
    }

    @Test
    void saysThatAnEmptyFileHoldsNothingButRecordsIntoIt() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.tautlog"));
        assertThrows(RecordingException.class, () -> Recording.open(empty));
        RecordingWriter.open(empty, "winch-1").close();
        try (Recording recording = Recording.open(empty)) {
            assertEquals(List.of(), recording.outings());
        }
    }

    @Test
    void refusesToReadAChangeThatWasBrokenOffUntilItIsTakenBack() throws Exception {
        Path crashed = Files.createDirectory(folder.resolve("crashed")).resolve("r.tautlog");
        Path whole = folder.resolve("whole.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(whole, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 2_000).tell(outing);
            outing.end();
            outing.commit();
        }
        ClosedFileTest.copyInTheMiddleOfAChange(whole, crashed);
        assertTrue(Files.mismatch(whole, crashed) >= 0, "else this shows nothing");
        byte[] before = Files.readAllBytes(crashed);
        Path link = Files.createSymbolicLink(folder.resolve("link.tautlog"), crashed);

        for (Path name : List.of(crashed, link)) {
            RecordingException e = assertThrows(RecordingException.class, () -> Recording.open(name));
            String message = String.valueOf(e.getMessage());
            assertTrue(message.startsWith(name + ": ") && message.contains("-journal"), message);
            assertTrue(message.contains("it once where its folder can be written"), message);
            assertEquals(Scope.THIS_FILE, e.scope());
        }
        assertArrayEquals(before, Files.readAllBytes(crashed));

        RecordingWriter.open(crashed, "winch-1").close();
        try (Recording recording = Recording.open(link)) {
            assertTrue(recording.verify().isIntact());
        }
    }

    @Test
    void saysThatAMissingFileIsMissing() {
        RecordingException e =
                assertThrows(RecordingException.class, () -> Recording.open(folder.resolve("none.tautlog")));
        assertTrue(String.valueOf(e.getMessage()).contains("no such file"), e.toString());
    }

    @Test
    void letsOnlyOneWriterIn() throws IOException {
        Path file = folder.resolve("r.tautlog");
        try (RecordingWriter first = RecordingWriter.open(file, "winch-1")) {
            RecordingException e = assertThrows(RecordingException.class, () -> RecordingWriter.open(file, "winch-1"));
            assertTrue(String.valueOf(e.getMessage()).contains("being written by another"), e.toString());
            assertEquals(List.of(), first.interrupted());
        }
        RecordingWriter.open(file, "winch-1").close();
    }

    @Test
    void refusesToMixTwoWinches() throws IOException {
        Path file = recording();
        RecordingException e = assertThrows(RecordingException.class, () -> RecordingWriter.open(file, "winch-2"));
        assertTrue(String.valueOf(e.getMessage()).contains("'winch-1'"), e.toString());
        assertEquals(Scope.THIS_FILE, e.scope());
    }

    @Test
    void foldsNoLogIntoAFileThatItRefuses() throws IOException {
        // given: a copy as a power cut leaves it, its newest rows in the log
        Path file = folder.resolve("r.tautlog");
        Path cut = Files.createDirectory(folder.resolve("cut")).resolve("r.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 20).tell(outing);
            outing.commit();
            Files.copy(file, cut);
            Files.copy(RecordingFile.log(file), RecordingFile.log(cut));
        }
        byte[] rows = Files.readAllBytes(cut);
        byte[] log = Files.readAllBytes(RecordingFile.log(cut));

        // when
        assertThrows(RecordingException.class, () -> RecordingWriter.open(cut, "winch-2"));

        // then
        assertArrayEquals(rows, Files.readAllBytes(cut));
        assertArrayEquals(log, Files.readAllBytes(RecordingFile.log(cut)));
    }

    @Test
    void saysOfAFolderThatIsNotThereThatAnotherFileWouldNotDoEither() {
        RecordingException e = assertThrows(
                RecordingException.class, () -> RecordingWriter.open(folder.resolve("gone/r.tautlog"), "winch-1"));
        assertEquals(Scope.BEYOND, e.scope());
    }

    @Test
    void leavesOneFileBehindThatReadersAddNothingTo() throws IOException {
        Path file = recording();
        try (Recording recording = Recording.open(file)) {
            assertEquals(1, recording.outings().size());
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(file), left.toList());
        }
    }

    @Test
    void opensANameFullOfOddCharacters() throws IOException {
        Path file = folder.resolve("a %41?#&ö b.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            writer.begin(Story.START).commit();
        }
        assertTrue(Files.exists(file));
        try (Recording recording = Recording.open(file)) {
            assertEquals(1, recording.outings().size());
        }
    }

    @Test
    void keepsWhatWaitsWhenTheDiskIsFullAndWritesItWhenThereIsRoom() throws Exception {
        Path file = folder.resolve("full.tautlog");
        Story story = Story.wild(4, 1_500);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            story.tell(outing, 0, 100);
            outing.commit();
            limitPages(writer, RecordingFile.pragma(writer.connection(), "page_count") + 3);
            int refused = 0;
            for (int from = 100; from < story.size(); from += 20) {
                story.tell(outing, from, Math.min(story.size(), from + 20));
                try {
                    outing.commit();
                } catch (RecordingException e) {
                    refused++;
                    assertTrue(String.valueOf(e.getMessage()).contains("disk is full"), e.toString());
                }
            }
            assertTrue(refused > 10, refused + " commits refused");
            assertTrue(isReadable(file));
            limitPages(writer, 1_000_000);
            outing.end();
            outing.commit();
        }
        try (Recording recording = Recording.open(file)) {
            EvidenceLog log = new EvidenceLog();
            recording.replay(recording.outings().get(0), log);
            assertEquals(story.lines(), log.lines().subList(0, log.lines().size() - 1));
            assertTrue(
                    recording.verify().isIntact(), recording.verify().damages().toString());
        }
    }

    private static boolean isReadable(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify().isIntact();
        }
    }

    private static void limitPages(RecordingWriter writer, long pages) throws SQLException {
        try (ResultSet rows = writer.connection().createStatement().executeQuery("PRAGMA max_page_count = " + pages)) {
            assertTrue(rows.next());
        }
    }
}
