package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;

/** RECORDING.md, "Packed". */
class PackerTest {
    @TempDir
    Path folder;

    private static void tell(RecordingWriter writer, Story story) throws IOException {
        OutingWriter outing = writer.begin(Story.START);
        for (int from = 0; from < story.size(); from += 500) {
            story.tell(outing, from, Math.min(story.size(), from + 500));
            for (int k = 0; k < 30; k++) {
                outing.second(new Second(
                        k,
                        500 + 500L * k,
                        -8,
                        8,
                        3,
                        500,
                        OptionalDouble.of(540),
                        "straight",
                        0.01 * k,
                        Second.AT_MOST));
            }
            outing.commit();
        }
        outing.finding(new Finding.Trouble(Finding.TroubleKind.ONE_SAMPLE_PEAK, 520, 520));
        outing.end();
        outing.commit();
    }

    /** An outing of every kind of call and extreme, and a plain one. */
    private Path recorded(String name) throws IOException {
        Path file = folder.resolve(name);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            tell(writer, Story.wild(1, 4_000));
            tell(writer, Story.plain(2, 2_000));
        }
        return file;
    }

    /** All that a reader can be told. */
    private static List<Object> all(Path file) throws IOException {
        List<Object> all = new ArrayList<>();
        try (Recording recording = Recording.open(file)) {
            all.add(recording.id());
            all.add(recording.verify());
            for (Outing outing : recording.outings()) {
                EvidenceLog byFrames = new EvidenceLog();
                all.add(recording.replay(outing, byFrames));
                all.add(byFrames.lines());
                RunLog byRuns = new RunLog();
                all.add(recording.replay(outing, byRuns));
                all.add(byRuns.samples);
                all.add(recording.seconds(outing));
                all.add(recording.findings(outing));
                all.add(recording.tickOf(outing, outing.lastNumber()));
            }
        }
        return all;
    }

    private static List<String> column(Path file, String sql) throws SQLException {
        List<String> rows = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery(sql)) {
            while (found.next()) {
                rows.add(found.getString(1));
            }
        }
        return rows;
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void tellsTheSameWithEveryLinkInLessRoom() throws Exception {
        Path file = recorded("a.tautlog");
        List<Object> before = all(file);
        String index =
                "SELECT seq || outing || span || kind || first || last || tick || last_tick || count || hex(link)"
                        + " FROM evidence ORDER BY seq";
        List<String> rows = column(file, index);
        long bytes = Files.size(file);

        Packed packed = Packer.pack(file);

        assertEquals(before, all(file));
        assertEquals(rows, column(file, index));
        assertEquals(List.of("4"), column(file, "PRAGMA user_version"));
        assertEquals(
                List.of("0"),
                column(file, "SELECT count(*) FROM evidence WHERE kind = 2 AND substr(block, 6, 1) <> x'03'"));
        assertEquals(bytes, packed.bytesBefore());
        assertEquals(Files.size(file), packed.bytesAfter());
        assertTrue(packed.isReplaced() && packed.bytesAfter() < bytes, packed.toString());
        assertEquals(((Verification) before.get(1)).samples(), packed.samples());
        assertEquals(List.of("a.tautlog"), names());
    }

    @Test
    void leavesWhatIsPackedAlone() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        byte[] once = Files.readAllBytes(file);

        Packed again = Packer.pack(file);

        assertFalse(again.isReplaced());
        assertArrayEquals(once, Files.readAllBytes(file));
    }

    @Test
    void refusesARecordingThatIsBeingWritten() throws Exception {
        Path file = folder.resolve("live.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(3, 900).tell(outing);
            outing.commit();

            RecordingException refused = assertThrows(RecordingException.class, () -> Packer.pack(file));

            assertTrue(String.valueOf(refused.getMessage()).contains("is being written"), refused.getMessage());
            outing.end();
            outing.commit();
        }
        assertEquals(List.of("live.tautlog"), names());
        try (Recording recording = Recording.open(file)) {
            assertTrue(recording.verify().isIntact());
        }
    }

    @Test
    void refusesADamagedRecordingAndLeavesItAsItIs() throws Exception {
        Path file = recorded("a.tautlog");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("UPDATE evidence SET block = x'00' || substr(block, 2) WHERE seq = 3");
        }
        byte[] before = Files.readAllBytes(file);

        RecordingException refused = assertThrows(RecordingException.class, () -> Packer.pack(file));

        assertTrue(String.valueOf(refused.getMessage()).contains("damaged"), refused.getMessage());
        assertArrayEquals(before, Files.readAllBytes(file));
        assertEquals(List.of("a.tautlog"), names());
    }

    /** The normal end of an outing: the newest rows stand in the log, the outing has no end. */
    @Test
    void packsWhatAPowerCutEnded() throws Exception {
        Path file = folder.resolve("cut.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        OutingWriter outing = writer.begin(Story.START);
        Story story = Story.wild(5, 3_000);
        story.tell(outing);
        outing.commit();
        String link = outing.lastLink();
        writer.abandon();
        Path copy = Files.createDirectory(folder.resolve("copy")).resolve("cut.tautlog");
        CopiedRecording.copy(file, copy);

        assertTrue(Packer.pack(copy).isReplaced());

        assertFalse(Files.exists(copy.resolveSibling("cut.tautlog-wal")));
        try (Recording recording = Recording.open(copy)) {
            EvidenceLog log = new EvidenceLog();
            assertEquals(List.of(), recording.replay(recording.outings().get(0), log));
            assertEquals(story.lines(), log.lines());
            assertEquals(link, recording.lastLink());
            assertTrue(recording.verify().isIntact());
        }
    }

    @Test
    void refusesAFileThatWasCopiedWithoutItsLog() throws Exception {
        Path file = folder.resolve("cut.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        OutingWriter outing = writer.begin(Story.START);
        Story.wild(5, 3_000).tell(outing);
        outing.commit();
        writer.abandon();
        Path alone = Files.createDirectory(folder.resolve("alone")).resolve("cut.tautlog");
        Files.copy(file, alone);
        byte[] before = Files.readAllBytes(alone);

        RecordingException refused = assertThrows(RecordingException.class, () -> Packer.pack(alone));

        assertTrue(String.valueOf(refused.getMessage()).contains("missing"), refused.getMessage());
        assertArrayEquals(before, Files.readAllBytes(alone));
    }

    /** Power went while the copy was written, or before it took the file's place. */
    @Test
    void beginsAnewWhereACopyWasLeft() throws Exception {
        Path file = recorded("a.tautlog");
        List<Object> before = all(file);
        PackedCopy.write(file, folder.resolve("a.tautlog-pack"));
        byte[] whole = Files.readAllBytes(folder.resolve("a.tautlog-pack"));
        for (int length : new int[] {0, 100, whole.length / 2, whole.length}) {
            assertEquals(before, all(file));
            Files.write(folder.resolve("a.tautlog-pack"), java.util.Arrays.copyOf(whole, length));
            Files.write(folder.resolve("a.tautlog-pack-journal"), new byte[600]);
            Path other = folder.resolve("other-" + length + ".tautlog");
            Files.copy(file, other);
            Files.move(folder.resolve("a.tautlog-pack"), folder.resolve(other.getFileName() + "-pack"));
            Files.move(folder.resolve("a.tautlog-pack-journal"), folder.resolve(other.getFileName() + "-pack-journal"));

            assertTrue(Packer.pack(other).isReplaced());

            assertEquals(before, all(other));
        }
        assertTrue(names().stream().allMatch(name -> name.endsWith(".tautlog")), names().toString());
    }

    @Test
    void packsWhatALinkPointsToAndKeepsTheLink() throws Exception {
        Path file = recorded("a.tautlog");
        Path link = Files.createSymbolicLink(
                Files.createDirectory(folder.resolve("l")).resolve("l.tautlog"), file);

        assertTrue(Packer.pack(link).isReplaced());

        assertTrue(Files.isSymbolicLink(link));
        assertFalse(Packer.pack(file).isReplaced());
    }

    @Test
    void aPackedRecordingCanGoOnAndBePackedAgain() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            tell(writer, Story.plain(9, 2_000));
        }
        List<Object> before = all(file);
        assertTrue(((Verification) before.get(1)).isIntact());

        assertTrue(Packer.pack(file).isReplaced());

        assertEquals(before, all(file));
    }

    @Test
    void whatIsThinnedIsPackedAndWhatIsPackedIsThinned() throws Exception {
        for (boolean packFirst : new boolean[] {true, false}) {
            Path file = folder.resolve(packFirst + ".tautlog");
            try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
                quiet(writer);
                tell(writer, Story.plain(2, 2_000));
            }
            if (packFirst) {
                Packer.pack(file);
            }
            Thinned thinned =
                    Thinner.thin(file, Long.MAX_VALUE, Long.MAX_VALUE, OptionalLong.of(1_778_000_000_000_000L));
            assertEquals(1, thinned.outings());
            List<Object> before;
            try (Recording recording = Recording.open(file)) {
                before = List.of(
                        recording.verify(),
                        recording.seconds(recording.outings().get(0)));
            }

            Packer.pack(file);

            try (Recording recording = Recording.open(file)) {
                assertEquals(
                        before,
                        List.of(
                                recording.verify(),
                                recording.seconds(recording.outings().get(0))));
                assertTrue(recording.verify().isIntact());
            }
        }
    }

    /** Nothing found in it, all of it looked at: may be thinned. */
    private static void quiet(RecordingWriter writer) throws IOException {
        OutingWriter outing = writer.begin(Story.START);
        Story.plain(1, 700).tell(outing);
        for (int k = 0; k < 35; k++) {
            outing.second(new Second(
                    k, 500 + 500L * k, -8, 8, 3, 500, OptionalDouble.of(540), "straight", 0.01, Second.AT_MOST));
        }
        outing.end();
        outing.commit();
    }

    /** The logger goes on with today's recording, whoever packed it. */
    @Test
    void leavesTheFileToItsOwner() throws IOException {
        Path file = recorded("owned.tautlog");
        assumeTrue(Files.getFileStore(file).supportsFileAttributeView("posix"), "no owners and permissions here");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
        boolean isRoot = Files.getOwner(file).getName().equals("root");
        if (isRoot) {
            Files.setOwner(
                    file, file.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody"));
        }
        String owner = Files.getOwner(file).getName();

        Packer.pack(file);

        try (Recording recording = Recording.open(file)) {
            assertTrue(recording.isPacked());
        }
        assertEquals(isRoot ? "nobody" : owner, Files.getOwner(file).getName());
        assertEquals("rw-rw----", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    private static void change(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static String refusal(Path file) throws IOException {
        byte[] before = Files.readAllBytes(file);
        RecordingException refused = assertThrows(RecordingException.class, () -> Packer.pack(file));
        assertArrayEquals(before, Files.readAllBytes(file));
        return String.valueOf(refused.getMessage());
    }

    @Test
    void tellsThatAPackedRecordingWasDamagedSince() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        change(file, "UPDATE evidence SET block = substr(block, 1, 40) || x'00' || substr(block, 42) WHERE seq = 3");

        String refusal = refusal(file);

        assertTrue(refusal.startsWith(file + ": is packed already, and is damaged"), refusal);
        assertTrue(refusal.contains("`tautlog verify`"), refusal);
    }

    @Test
    void whatCannotBeCleanedUpKeepsNobodyOut() throws Exception {
        Path file = recorded("a.tautlog");
        Path inTheWay = Files.createDirectory(folder.resolve("a.tautlog-pack"));
        Files.writeString(inTheWay.resolve("note"), "not mine");
        String refusal = refusal(file);
        assertTrue(refusal.contains("cannot be packed"), refusal);

        Files.delete(inTheWay.resolve("note"));
        Files.delete(inTheWay);

        assertTrue(Packer.pack(file).isReplaced());
    }

    /** Tables that SQLite keeps for itself are not copied; what somebody added is. */
    @Test
    void packsWhatOtherProgramsAddedTo() throws Exception {
        Path file = recorded("a.tautlog");
        List<Object> before = all(file);
        change(file, "CREATE TABLE \"my own \"\"notes\"\"\" (at INTEGER PRIMARY KEY AUTOINCREMENT, \"select\" TEXT)");
        change(file, "INSERT INTO \"my own \"\"notes\"\"\" VALUES (7, 'a wet day')");
        change(file, "CREATE TABLE sqliteless (word TEXT PRIMARY KEY) WITHOUT ROWID");
        change(file, "INSERT INTO sqliteless VALUES ('b'), ('a')");
        change(file, "ANALYZE");

        assertTrue(Packer.pack(file).isReplaced());

        assertEquals(before, all(file));
        assertEquals(List.of("7a wet day"), column(file, "SELECT at || \"select\" FROM \"my own \"\"notes\"\"\""));
        assertEquals(List.of("a", "b"), column(file, "SELECT word FROM sqliteless"));
    }

    @Test
    void refusesAFileThatIsWriteProtected() throws Exception {
        Path file = recorded("a.tautlog");
        assumeTrue(Files.getFileStore(file).supportsFileAttributeView("posix"), "no permissions here");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r-----"));

        String refusal = refusal(file);

        assertTrue(refusal.startsWith(file + ": is write-protected"), refusal);
        assertEquals(List.of("a.tautlog"), names());
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        Packer.pack(file);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r-----"));
        assertFalse(Packer.pack(file).isReplaced(), "nothing to pack, so nothing to protect");
    }

    @Test
    void refusesAFileThatHasAnotherNameOnTheDisk() throws Exception {
        Path file = recorded("a.tautlog");
        assumeTrue(Files.getFileStore(file).supportsFileAttributeView("unix"), "no hard links here");
        Path other = Files.createLink(folder.resolve("other"), file);

        String refusal = refusal(file);

        assertTrue(refusal.startsWith(file + ": has 2 names on this disk (hard links)"), refusal);
        assertTrue(Files.isSameFile(file, other));
        Files.delete(other);
        assertTrue(Packer.pack(file).isReplaced());
    }

    /** A packing was killed before its copy took the file's place, or just behind that, and the lock was not let go. */
    @Test
    void clearsAwayWhatAKilledPackingLeft() throws Exception {
        Path file = recorded("a.tautlog");
        for (boolean isReplaced : new boolean[] {true, false}) {
            for (String ending : List.of("-pack", "-pack-journal", "-lock")) {
                Files.write(folder.resolve("a.tautlog" + ending), new byte[0]);
            }

            assertEquals(isReplaced, Packer.pack(file).isReplaced());

            assertEquals(List.of("a.tautlog"), names());
        }
    }

    @Test
    void leavesTheCopyOfWhoIsPackingJustNow() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        Files.writeString(folder.resolve("a.tautlog-pack"), "being written");
        WriterLock other = WriterLock.take(file);

        assertFalse(Packer.pack(file).isReplaced(), "intact, whoever is at work");

        assertEquals(List.of("a.tautlog", "a.tautlog-lock", "a.tautlog-pack"), names());
        other.close();
    }

    @Test
    void verifiesWhatTheLoggerHasOpen() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            assertEquals(List.of(), writer.interrupted());

            assertFalse(Packer.pack(file).isReplaced());
        }
        assertEquals(List.of("a.tautlog"), names());
    }

    /** A lock that cannot be taken, a copy that cannot be deleted. */
    @Test
    void whatCannotBeClearedAwayIsNoDamage() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        for (String ending : List.of("-lock", "-pack")) {
            Path inTheWay = Files.createDirectory(folder.resolve("a.tautlog" + ending));
            Path note = Files.writeString(inTheWay.resolve("note"), "not mine");

            assertFalse(Packer.pack(file).isReplaced(), ending);

            Files.delete(note);
            Files.delete(inTheWay);
        }
        assertEquals(List.of("a.tautlog"), names());
    }

    @Test
    void namesTheDamageWhoeverIsAtWorkAndLeavesTheCopyBesideIt() throws Exception {
        Path file = recorded("a.tautlog");
        Packer.pack(file);
        change(file, "UPDATE evidence SET block = substr(block, 1, 40) || x'00' || substr(block, 42) WHERE seq = 3");
        Files.writeString(folder.resolve("a.tautlog-pack"), "may be whole");
        WriterLock other = WriterLock.take(file);
        String refusal = refusal(file);
        other.close();

        assertTrue(refusal.startsWith(file + ": is packed already, and is damaged"), refusal);
        assertEquals(refusal, refusal(file));
        assertEquals(List.of("a.tautlog", "a.tautlog-pack"), names());
    }
}
