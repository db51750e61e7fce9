package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.fixtures.EvidenceLog;
import tautlog.recording.pages.NotPlainException;

/** What a recording tells that is read at once is what it tells through SQLite, damage and refusals included. */
class ReadAtOnceTest {
    @TempDir
    Path folder;

    private interface Opening {
        Recording open(Path file) throws RecordingException;
    }

    /** Three outings, the second cut off by the power before the third began. */
    private Path recording() throws IOException {
        Path file = folder.resolve("r.tautlog");
        Path before = Files.createDirectory(folder.resolve("before")).resolve("r.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(before, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.wild(1, 2_500).tell(outing);
            outing.end();
            outing.commit();
            OutingWriter cut = writer.begin(Story.START);
            Story.plain(2, 30).tell(cut);
            cut.commit();
            CopiedRecording.copy(before, file);
        }
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(3, 900).tell(outing);
            outing.end();
            outing.commit();
        }
        return file;
    }

    private static boolean isToldFromMemory(Path file) {
        return ClosedFile.read(file).filter(ReadAtOnceTest::isPlain).isPresent();
    }

    private static boolean isPlain(byte[] bytes) {
        try {
            PlainRows.of(bytes);
            return true;
        } catch (NotPlainException e) {
            return false;
        }
    }

    /** All that it tells, or why not. */
    private static List<String> told(Path file, Opening opening) {
        List<String> told = new ArrayList<>();
        try (Recording recording = opening.open(file)) {
            recording.inOneView(() -> {
                told.add(recording.winch() + recording.id());
                Recording.Contents contents = recording.contents();
                told.add(contents.toString());
                for (Outing outing : contents.outings()) {
                    EvidenceLog log = new EvidenceLog();
                    told.add(recording.replayWithFingerprint(outing, log).toString());
                    told.addAll(log.lines());
                    told.add(recording.fingerprint(outing));
                }
                return told;
            });
        } catch (RecordingException e) {
            told.add(String.valueOf(e.getMessage()) + e.scope());
        }
        return told;
    }

    private static List<String> assertSame(Path file) {
        List<String> bySqlite = told(file, Recording::open);
        assertEquals(bySqlite, told(file, Recording::openToReadAll));
        return bySqlite;
    }

    private Path with(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("other.tautlog"), bytes);
    }

    private static void sql(Path file, String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.createStatement().execute(sql);
        }
    }

    @Test
    void tellsTheSameAsThroughSqlite() throws IOException {
        Path file = recording();
        assertTrue(isToldFromMemory(file));
        assertTrue(assertSame(file).size() > 3_000);
    }

    @Test
    void tellsTheSameOfEveryFormatVersion() {
        for (String version : List.of("version-1.tautlog", "version-2.tautlog", "version-3.tautlog")) {
            Path file = Path.of("../../samples/recordings", version);
            assertTrue(isToldFromMemory(file), version);
            assertTrue(assertSame(file).size() > 10);
        }
    }

    @Test
    void tellsWhatIsAskedForSeldomFromTheSameBytes() throws IOException {
        Path file = recording();
        try (Recording plain = Recording.openToReadAll(file);
                Recording sqlite = Recording.open(file)) {
            assertEquals(sqlite.verify(), plain.verify());
            assertEquals(sqlite.lastLink(), plain.lastLink());
            assertEquals(sqlite.sealedLink(), plain.sealedLink());
            Outing outing = sqlite.outings().get(0);
            assertEquals(sqlite.tickOf(outing, outing.lastNumber()), plain.tickOf(outing, outing.lastNumber()));
            assertEquals(sqlite.seconds(outing), plain.seconds(outing));
            assertEquals(sqlite.findings(outing), plain.findings(outing));
        }
    }

    /** No bytes stand for a database that SQLite has no memory for: it refuses both. */
    @Test
    void refusesAgainWhatSqliteCouldNotTakeFromTheBytes() throws Exception {
        PlainRows rows = PlainRows.of(Files.readAllBytes(recording()));
        try (View.Plain view = new View.Plain(new byte[0], rows)) {
            assertThrows(SQLException.class, view::connection);
            assertThrows(SQLException.class, view::connection);
        }
    }

    /** Rows set aside, tail rows left open and findings are rare in closed files; so they are put there. */
    @Test
    void tellsTheSameOfTailsAndFindings() throws Exception {
        Path file = recording();
        sql(
                file,
                "INSERT INTO tail (outing, span, blocks) SELECT outing, CASE seq % 2 WHEN 0 THEN -1 - span ELSE 99 END,"
                        + " block FROM evidence WHERE kind = 4 AND outing = 1");
        sql(file, "INSERT INTO tail (outing, span, blocks) SELECT 1, 99, block FROM evidence WHERE kind = 3 LIMIT 2");
        sql(file, "INSERT INTO tail (outing, span, blocks) VALUES (7, 1, x'00')");
        sql(
                file,
                "INSERT INTO finding (outing, kind, start, json, crc) VALUES (1, 'pull', 7, '{}', 8),"
                        + " (0, 'ö', -7, 'ä', 2)");
        assertTrue(isToldFromMemory(file));
        assertSame(file);
    }

    /** Tiny ones: a file of few bytes would take much memory. */
    @Test
    void leavesVeryManyRowsToSqlite() throws Exception {
        Path file = recording();
        String some = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d) INSERT INTO finding"
                + " (outing, kind, start, json, crc) SELECT 1, '', 0, '', 0 FROM n";
        sql(file, String.format(some, PlainRows.MOST_ROWS - 1_000));
        assertTrue(isToldFromMemory(file));
        sql(file, String.format(some, 1_000));
        assertFalse(isToldFromMemory(file), "its blocks are rows, too");
        assertSame(file);
    }

    @Test
    void leavesAForeignTableASignAndANewerFormatToSqlite() throws Exception {
        byte[] whole = Files.readAllBytes(recording());
        for (String odd : List.of(
                "CREATE TABLE notes (text)",
                "INSERT INTO begun VALUES (2, 0)",
                "INSERT INTO begun VALUES (2, 1)",
                "PRAGMA user_version = 5",
                "PRAGMA application_id = 3",
                "DROP TABLE finding",
                "DELETE FROM recording",
                "UPDATE evidence SET link = 'text' WHERE seq = 2",
                "PRAGMA journal_mode = WAL")) {
            Path file = with(whole);
            sql(file, odd);
            assertFalse(isToldFromMemory(file), odd);
            assertSame(file);
        }
    }

    @Test
    void refusesATornFileAtEveryLengthAsBefore() throws IOException {
        byte[] whole = Files.readAllBytes(recording());
        for (int length = 0; length < whole.length + 3_000; length += 997) {
            Path file = with(Arrays.copyOf(whole, length));
            assertFalse(isToldFromMemory(file), length + " bytes");
            assertSame(file);
        }
    }

    /** In the header and where pages say what is in them, every byte; elsewhere here and there. */
    @Test
    void tellsOrRefusesTheSameWhicheverByteRots() throws IOException {
        Path small = folder.resolve("small.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(small, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 120).tell(outing);
            outing.end();
            outing.commit();
        }
        byte[] whole = Files.readAllBytes(small);
        int fromMemory = 0;
        int tried = 0;
        Random random = new Random(4);
        for (int at = 0; at < whole.length; at += at < 110 || at % 1_024 < 16 ? 1 : 1 + random.nextInt(40)) {
            byte[] copy = whole.clone();
            copy[at] ^= (byte) (1 << random.nextInt(8));
            Path file = with(copy);
            fromMemory += isToldFromMemory(file) ? 1 : 0;
            tried++;
            assertSame(file);
        }
        assertTrue(fromMemory > tried / 10 && fromMemory < tried, fromMemory + " of " + tried + " from memory");
    }

    @Test
    void readsThroughSqliteWhatIsBeingWritten() throws IOException {
        Path file = recording();
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(9, 40).tell(outing);
            outing.commit();

            assertFalse(isToldFromMemory(file));
            assertTrue(assertSame(file).toString().contains("index=3"));
        }
    }

    @Test
    void tellsWhatWasThereWhenItWasOpenedAndHoldsNoWriterUp() throws IOException {
        Path file = recording();
        List<String> before = told(file, Recording::open);
        try (Recording recording = Recording.openToReadAll(file)) {
            try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
                OutingWriter outing = writer.begin(Story.START);
                Story.plain(9, 40).tell(outing);
                outing.end();
                outing.commit();
            }
            assertEquals(before, told(file, any -> recording));
        }
        assertTrue(isToldFromMemory(file), "the writer left one plain file");
        assertEquals(4, told(file, Recording::openToReadAll).get(1).split("Outing\\[", -1).length - 1);
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(folder.resolve("before"), file), left.sorted().toList());
        }
    }
}
