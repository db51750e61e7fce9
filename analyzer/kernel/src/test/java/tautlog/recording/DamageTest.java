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
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.HookupSource;

class DamageTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void record() throws IOException {
        file = folder.resolve("small.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 30).tell(outing);
            outing.end();
            outing.commit();
        }
    }

    private static Verification verify(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify();
        }
    }

    /** Every place: SQLite leaves stale copies behind when it moves rows from page to page. */
    private static List<Integer> placesOf(byte[] where, byte[] what) {
        List<Integer> places = new ArrayList<>();
        for (int at = 0; at + what.length <= where.length; at++) {
            if (where[at] == what[0] && Arrays.equals(where, at, at + what.length, what, 0, what.length)) {
                places.add(at);
            }
        }
        assertFalse(places.isEmpty(), "the block does not lie in one piece");
        return places;
    }

    private byte[] block(int kind) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement select =
                        connection.prepareStatement("SELECT block FROM evidence WHERE kind = " + kind);
                ResultSet rows = select.executeQuery()) {
            assertTrue(rows.next());
            return rows.getBytes(1);
        }
    }

    @Test
    void findsAndNamesAByteFlippedAnywhereInABlock() throws Exception {
        for (Block.Kind kind : List.of(Block.Kind.SAMPLES, Block.Kind.SHAFT, Block.Kind.EVENTS, Block.Kind.END)) {
            byte[] block = block(kind.code());
            byte[] whole = Files.readAllBytes(file);
            List<Integer> places = placesOf(whole, block);
            Path flipped = folder.resolve("flipped.tautlog");
            for (int i = 0; i < block.length; i++) {
                byte[] copy = whole.clone();
                for (int at : places) {
                    copy[at + i] ^= 0x10;
                }
                Files.write(flipped, copy);
                Verification verification = verify(flipped);
                assertEquals(1, verification.damages().size(), kind + " byte " + i);
                Damage damage = verification.damages().get(0);
                assertEquals(0, damage.outing());
                assertTrue(damage.place().startsWith(kind.word() + " block "), damage.summary());
                if (kind == Block.Kind.SAMPLES) {
                    assertEquals(500, damage.firstNumber());
                    assertEquals(500 + 30 * 25 - 1, damage.lastNumber());
                    assertTrue(damage.time().startsWith("2026-05-04T08:00:0"), damage.summary());
                }
            }
        }
    }

    @Test
    void namesTheStartBlockWhenAnyOfItsBytesIsFlipped() throws Exception {
        byte[] block = block(Block.Kind.START.code());
        byte[] whole = Files.readAllBytes(file);
        List<Integer> places = placesOf(whole, block);
        Path flipped = folder.resolve("flipped-start.tautlog");
        for (int i = 0; i < block.length; i++) {
            byte[] copy = whole.clone();
            for (int at : places) {
                copy[at + i] ^= 0x10;
            }
            Files.write(flipped, copy);
            int at = i;
            List<Damage> damages = verify(flipped).damages();
            assertTrue(
                    damages.stream().anyMatch(d -> d.outing() == 0 && d.place().startsWith("start block ")),
                    () -> "byte " + at + ": " + damages);
        }
    }

    @Test
    void damageCostsOnlyItsOwnBlock() throws Exception {
        Path big = folder.resolve("big.tautlog");
        Story story = Story.plain(2, 2_000);
        try (RecordingWriter writer = RecordingWriter.open(big, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            story.tell(outing);
            outing.end();
            outing.commit();
        }
        int damaged = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + big);
                PreparedStatement update = connection.prepareStatement(
                        "UPDATE evidence SET block = ? WHERE seq = 5 AND kind = 2 RETURNING count")) {
            byte[] bytes;
            try (ResultSet rows = connection
                    .prepareStatement("SELECT block FROM evidence WHERE seq = 5")
                    .executeQuery()) {
                bytes = rows.getBytes(1);
            }
            bytes[bytes.length / 2] ^= 1;
            update.setBytes(1, bytes);
            try (ResultSet rows = update.executeQuery()) {
                damaged = rows.getInt(1);
            }
        }
        assertTrue(damaged > 16_000);

        try (Recording recording = Recording.open(big)) {
            EvidenceLog log = new EvidenceLog();
            List<Damage> damages = recording.replay(recording.outings().get(0), log);
            assertEquals(1, damages.size());
            Damage lost = damages.get(0);
            List<String> expected = story.lines().stream()
                    .filter(line -> !isLost(line, lost))
                    .collect(Collectors.toCollection(ArrayList::new));
            expected.add("end");
            assertEquals(expected, log.lines());
            assertEquals(damages, recording.verify().damages());
        }
    }

    /** FINDINGS.md, "Hookup in force": an id that the rig does not know counts as the one with the lowest limit, assumed. */
    @Test
    void lostEventsLeaveNoHookupKnownUntilTheNextNaming() throws Exception {
        Path named = named();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + named)) {
            connection
                    .createStatement()
                    .executeUpdate("UPDATE evidence SET block = zeroblob(length(block)) WHERE seq ="
                            + " (SELECT min(seq) FROM evidence WHERE kind = 4)");
        }
        try (Recording recording = Recording.open(named)) {
            EvidenceLog log = new EvidenceLog();
            assertEquals(1, recording.replay(recording.outings().get(0), log).size());
            RunLog byRuns = new RunLog();
            recording.replay(recording.outings().get(0), byRuns);

            List<String> hookups = log.lines().stream()
                    .filter(line -> line.startsWith("hookup"))
                    .toList();
            assertEquals("hookup 0 ? LOWEST", log.lines().get(0));
            assertEquals("hookup 32768 hookup-2 SELECTOR", hookups.get(hookups.size() - 1));
            assertFalse(hookups.contains("hookup 0 hookup-0 SELECTOR"), hookups.toString());
            assertEquals("hookup 0 ? LOWEST", byRuns.log.lines().get(0));
        }
    }

    /** Rows: 1 start, 2 samples, 3 events (hookups 0 and 1), 4 samples, 5 events (hookup 2), 6 samples, 7 end. */
    private Path named() throws IOException {
        Path named = folder.resolve("named.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(named, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            for (int span = 0; span < 3; span++) {
                outing.hookup(span * 16_384L, "hookup-" + span, HookupSource.SELECTOR);
                outing.tension(span * 16_384L, 1_000_000L + span * 32_768_000L, 0, new int[16_384], 0, 16_384);
            }
            outing.end();
            outing.commit();
        }
        return named;
    }

    /** A row of samples between events of spans that follow each other (4) takes no naming with it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3 | hookup 0 ? LOWEST, hookup 32768 hookup-2 SELECTOR | row 3 before it is missing",
                "5 | hookup 0 hookup-0 SELECTOR, hookup 16384 hookup-1 SELECTOR, hookup 16384 ? LOWEST | row 5 before it is missing",
                "4, 5 | hookup 0 hookup-0 SELECTOR, hookup 16384 hookup-1 SELECTOR, hookup 32768 ? LOWEST | the rows 4 to 5 before it are missing",
                "3, 4 | hookup 0 ? LOWEST, hookup 32768 hookup-2 SELECTOR | the rows 3 to 4 before it are missing",
                "4 | hookup 0 hookup-0 SELECTOR, hookup 16384 hookup-1 SELECTOR, hookup 32768 hookup-2 SELECTOR | row 4 before it is missing",
                "6 | hookup 0 hookup-0 SELECTOR, hookup 16384 hookup-1 SELECTOR, hookup 32768 hookup-2 SELECTOR | row 6 before it is missing"
            })
    void missingEventsLeaveNoHookupKnownUntilTheNextNaming(String rows, String hookups, String reason)
            throws Exception {
        Path named = named();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + named)) {
            connection.createStatement().executeUpdate("DELETE FROM evidence WHERE seq IN (" + rows + ")");
        }
        try (Recording recording = Recording.open(named)) {
            EvidenceLog log = new EvidenceLog();
            List<Damage> damages = recording.replay(recording.outings().get(0), log);
            RunLog byRuns = new RunLog();
            recording.replay(recording.outings().get(0), byRuns);

            assertEquals(List.of(reason), damages.stream().map(Damage::reason).toList());
            assertEquals(hookups, hookups(log));
            assertEquals(hookups, hookups(byRuns.log));
            assertTrue(recording.verify().damages().containsAll(damages));
        }
    }

    private static String hookups(EvidenceLog log) {
        return log.lines().stream().filter(line -> line.startsWith("hookup")).collect(Collectors.joining(", "));
    }

    /** Rows of another outing between those of one are not missing; read through SQLite and out of the bytes. */
    @Test
    void rowsOfAnotherOutingAreNotMissing() throws Exception {
        Path named = named();
        for (String log : List.of("DELETE", "WAL")) {
            try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + named)) {
                connection.createStatement().execute("PRAGMA journal_mode = " + log);
                connection.createStatement().executeUpdate("UPDATE evidence SET outing = 1 WHERE seq IN (4, 5)");
            }
            try (Recording recording = Recording.open(named)) {
                EvidenceLog told = new EvidenceLog();
                assertEquals(List.of(), recording.replay(recording.outings().get(0), told));
                assertEquals("hookup 0 hookup-0 SELECTOR, hookup 16384 hookup-1 SELECTOR", hookups(told));
            }
        }
    }

    /** What is followed goes on behind a row that was taken earlier. */
    @Test
    void aRowThatIsMissingBehindWhatWasFollowedIsMissedToo() throws Exception {
        Path named = named();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + named)) {
            connection.createStatement().executeUpdate("DELETE FROM evidence WHERE seq IN (4, 5)");
        }
        try (Recording recording = Recording.open(named)) {
            EvidenceLog log = new EvidenceLog();

            recording.follow(recording.outings().get(0), 3, log, EvidenceLog::new);

            assertEquals("hookup 32768 ? LOWEST", hookups(log));
        }
    }

    private static boolean isLost(String line, Damage lost) {
        String[] words = line.split(" ");
        if (!words[0].equals("tension")) {
            return false;
        }
        long number = Long.parseLong(words[1]);
        return number >= lost.firstNumber() && number <= lost.lastNumber();
    }

    /** A link or a row changed by who can also mend the checksum still shows in the chain. */
    @Test
    void noticesAChangeWhoseChecksumWasMended() throws Exception {
        ByteWriter content = new ByteWriter();
        EventCodec.encode(List.of(Event.of(Event.Type.MARK, List.of("never happened"), 7)), content);
        Block forged = Block.of(Block.Kind.EVENTS, 0, 1, 0, 1, content);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement update =
                        connection.prepareStatement("UPDATE evidence SET block = ?, count = 1 WHERE kind = 4")) {
            update.setBytes(1, forged.bytes());
            update.executeUpdate();
        }
        List<Damage> damages = verify(file).damages();
        assertEquals(1, damages.size());
        assertTrue(damages.get(0).reason().contains("link"), damages.get(0).summary());
    }

    private static byte[] withoutItsLastByte(byte[] bytes) throws DamagedBlockException {
        Block block = Block.read(bytes, 0);
        ByteWriter content = new ByteWriter();
        content.raw(bytes, Block.HEADER, block.content().left() - 1);
        return Block.of(block.kind(), block.outing(), block.span(), block.first(), block.count(), content)
                .bytes();
    }

    /** Its checksum fits, its content does not: no frame of it is told, and the span's other blocks are told as if it were not there. */
    @Test
    void tellsNothingOfABlockWhoseContentIsRefused() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement update = connection.prepareStatement(
                        "UPDATE evidence SET kind = ?, count = ?, block = ? WHERE kind = ?")) {
            byte[] samples = withoutItsLastByte(block(2));
            update.setInt(1, 2);
            update.setInt(2, 30 * 25);
            update.setBytes(3, samples);
            update.setInt(4, 4);
            assertEquals(1, update.executeUpdate(), "the events become a second block of samples");
            byte[] shaft = withoutItsLastByte(block(3));
            update.setInt(1, 3);
            update.setInt(2, 15);
            update.setBytes(3, shaft);
            update.setInt(4, 3);
            assertEquals(1, update.executeUpdate());
        }
        try (Recording recording = Recording.open(file)) {
            List<String> expected = new ArrayList<>(Story.plain(1, 30).lines());
            expected.removeIf(line -> !line.startsWith("tension"));
            expected.add("end");
            EvidenceLog log = new EvidenceLog();
            assertEquals(2, recording.replay(recording.outings().get(0), log).size());
            assertEquals(expected, log.lines());
            RunLog byRuns = new RunLog();
            assertEquals(2, recording.replay(recording.outings().get(0), byRuns).size());
            assertEquals(List.of("end"), byRuns.log.lines());
            assertEquals(30 * 25, byRuns.samples.size());
        }
    }

    @Test
    void noticesARowThatWasTakenOut() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.createStatement().executeUpdate("DELETE FROM evidence WHERE kind = 3");
        }
        List<Damage> damages = verify(file).damages();
        assertTrue(damages.stream().anyMatch(d -> d.reason().contains("missing")), damages.toString());
    }

    /** SQLite tells it in several lines, the first of which names the database. */
    @Test
    void tellsOfADamagedStructureInOneLineEach() throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        bytes[39] = 5; // free pages, of which there are none
        Files.write(file, bytes);

        List<Damage> damages = verify(file).damages();

        assertEquals(
                List.of("file structure, time unknown: Freelist: size is 0 but should be 5"),
                damages.stream().map(Damage::summary).toList());
    }

    /** Where SQLite breaks off below the line that names the database, that line is all there is. */
    @Test
    void aNameOfTheDatabaseAloneIsDamageToo() {
        String name = "*** in database main ***";

        assertEquals(List.of(), Verifier.complaints(List.of("ok")));
        assertEquals(List.of(), Verifier.complaints(List.of()));
        assertEquals(List.of("Page 3: never used"), Verifier.complaints(List.of(name, "Page 3: never used")));
        assertEquals(List.of(name), Verifier.complaints(List.of(name)));
    }

    /** Whatever byte rots, reading answers in words: with what it could read, or with a RecordingException. */
    @Test
    void neverStumblesOverAFlippedByte() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        Path flipped = folder.resolve("flipped.tautlog");
        for (int at = 0; at < whole.length; at += 37) {
            byte[] copy = whole.clone();
            copy[at] ^= (byte) (1 << (at % 8));
            Files.write(flipped, copy);
            try (Recording recording = Recording.open(flipped)) {
                for (Outing outing : recording.outings()) {
                    recording.replay(outing, new EvidenceLog());
                }
                recording.verify();
            } catch (RecordingException e) {
                assertTrue(String.valueOf(e.getMessage()).contains("flipped.tautlog"), e.toString());
            }
        }
    }

    @Test
    void refusesATornFileAtEveryLength() throws IOException {
        byte[] whole = Files.readAllBytes(file);
        Path torn = folder.resolve("torn.tautlog");
        for (int length = 0; length < whole.length; length += 101) {
            Files.write(torn, Arrays.copyOf(whole, length));
            RecordingException e = assertThrows(RecordingException.class, () -> Recording.open(torn), "" + length);
            assertTrue(String.valueOf(e.getMessage()).contains("torn.tautlog: "), e.toString());
        }
        Files.write(torn, whole);
        assertTrue(verify(torn).isIntact());
    }

    @Test
    void setsADamagedTailRowAsideAndGoesOn() throws Exception {
        Path live = folder.resolve("live.tautlog");
        RecordingWriter writer = RecordingWriter.open(live, "winch-1");
        OutingWriter outing = writer.begin(Story.START);
        Story story = Story.plain(3, 40);
        for (int from = 0; from < story.size(); from += 10) {
            story.tell(outing, from, Math.min(story.size(), from + 10));
            outing.commit();
        }
        try (PreparedStatement update =
                writer.connection().prepareStatement("UPDATE tail SET blocks = substr(blocks, 1, 40) WHERE id = 3")) {
            update.executeUpdate();
        }
        writer.abandon();

        assertEquals(1, verify(live).damages().size());
        try (RecordingWriter next = RecordingWriter.open(live, "winch-1")) {
            assertEquals(1, next.interrupted().size());
        }
        Verification after = verify(live);
        assertEquals(1, after.damages().size());
        assertEquals("tail row 3", after.damages().get(0).place());
        assertFalse(after.gaps().isEmpty());
    }
}
