package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.HookupSource;

/** Nothing that is lost goes without a word: outings without a start, seconds in a foreign row, tail rows set aside. */
class LostOutingTest {
    private static final int SAMPLES = 30 * 25;

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void recordTwoOutings() throws IOException {
        file = folder.resolve("two.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            for (int outing = 0; outing < 2; outing++) {
                OutingWriter out = writer.begin(Story.START);
                Story.plain(outing, 30).tell(out);
                out.finding(new Finding.Jolt(500, 1, 510, 2, "straight", false));
                out.second(new Second(0, 500, 1, 2, 3, 500, OptionalDouble.empty(), "straight", 0.5, 0));
                out.end();
                out.commit();
            }
        }
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.createStatement().executeUpdate(sql);
        }
    }

    private Verification verify() throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify();
        }
    }

    @Test
    void namesAnOutingWhoseStartIsDamagedWithItsSamples() throws Exception {
        change("UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 1 AND outing = 1");

        Verification found = verify();

        LostOuting lost = found.lost().get(0);
        assertEquals(List.of(0), found.outings().stream().map(Outing::index).toList());
        assertEquals(1, lost.index());
        assertEquals(OptionalLong.of(SAMPLES), lost.samples());
        assertEquals("its start block is damaged: it does not begin with the mark of a block", lost.reason());
        assertFalse(found.isIntact());
    }

    @Test
    void namesAnOutingWhoseStartIsGoneAlsoWhenOnlyATailRowIsLeft() throws Exception {
        change("DELETE FROM evidence WHERE outing = 1");
        change("INSERT INTO tail (outing, span, blocks) VALUES (1, 1, x'00')");

        LostOuting lost = verify().lost().get(0);

        assertEquals("its start block is missing", lost.reason());
        assertEquals(OptionalLong.empty(), lost.samples());
        assertEquals("nobody knows how many samples", lost.extent());
    }

    @Test
    void checksWhatWasSaidOfALostOutingToo() throws Exception {
        change("UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 1 AND outing = 1");
        change("UPDATE finding SET json = replace(json, '510', '511') WHERE outing = 1");

        assertTrue(verify().damages().stream()
                .anyMatch(damage -> damage.outing() == 1 && damage.place().startsWith("finding ")));
    }

    @Test
    void namesWhatWasSaidOfAnOutingThatIsNotHere() throws Exception {
        change("UPDATE finding SET outing = 9 WHERE outing = 1");

        assertEquals(
                List.of("findings and seconds: they belong to an outing that is not here"),
                verify().damages().stream()
                        .map(damage -> damage.place() + ": " + damage.reason())
                        .toList());
    }

    @Test
    void findsAndNamesAByteFlippedAnywhereInABlockOfSeconds() throws Exception {
        byte[] block = seconds();
        for (int i = 0; i < block.length; i++) {
            byte[] flipped = block.clone();
            flipped[i] ^= 0x10;
            setSeconds(flipped);
            List<Damage> damages = verify().damages();
            assertEquals(1, damages.size(), "byte " + i);
            assertEquals(0, damages.get(0).outing());
            assertTrue(
                    damages.get(0).place().startsWith("seconds block "),
                    damages.get(0).summary());
        }
    }

    @Test
    void findsSecondsThatStandInAForeignRowAndBytesAfterThem() throws Exception {
        byte[] block = seconds();
        setSeconds(java.util.Arrays.copyOf(block, block.length + 1));
        assertTrue(verify().damages().get(0).reason().contains("1 bytes follow it"));

        setSeconds(block);
        assertTrue(verify().isIntact());

        change("UPDATE seconds SET outing = 1, span = 7 WHERE outing = 0");
        assertTrue(verify().damages().get(0).reason().contains("another kind, outing or span"));
    }

    private byte[] seconds() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                ResultSet rows = connection
                        .prepareStatement("SELECT block FROM seconds WHERE outing = 0")
                        .executeQuery()) {
            assertTrue(rows.next());
            return rows.getBytes(1);
        }
    }

    private void setSeconds(byte[] block) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement update =
                        connection.prepareStatement("UPDATE seconds SET block = ? WHERE outing = 0")) {
            update.setBytes(1, block);
            update.executeUpdate();
        }
    }

    /** RECORDING.md: a kept tail row counts from its span on, and may have held a change of hookup. */
    @Test
    void tailRowSetAsideLeavesNoHookupKnownFromItsSpanOnAndIsNamedByTheReplay() throws Exception {
        Path live = folder.resolve("live.tautlog");
        RecordingWriter writer = RecordingWriter.open(live, "winch-1");
        OutingWriter outing = writer.begin(Story.START);
        outing.hookup(0, "thick", HookupSource.MARK);
        outing.tension(0, 0, 0, new int[16_384], 0, 16_384);
        outing.commit();
        for (int frame = 0; frame < 3; frame++) {
            if (frame == 1) {
                outing.hookup(16_384 + 100, "thin", HookupSource.MARK);
            }
            outing.tension(16_384 + frame * 100L, 32_768_000 + frame * 200_000L, 0, new int[100], 0, 100);
            outing.commit();
        }
        try (PreparedStatement update = writer.connection()
                .prepareStatement("UPDATE tail SET blocks = substr(blocks, 1, 40) WHERE id ="
                        + " (SELECT max(id) - 1 FROM tail)")) {
            assertEquals(1, update.executeUpdate());
        }
        List<String> before = hookups(live);
        writer.abandon();
        RecordingWriter.open(live, "winch-1").close();

        assertEquals(List.of("hookup 0 thick MARK", "hookup 16384 ? LOWEST"), before);
        assertEquals(before, hookups(live));
        try (Recording recording = Recording.open(live)) {
            List<Damage> damages = recording.replay(recording.outings().get(0), new EvidenceLog());
            assertEquals(recording.verify().damages(), damages);
            assertEquals(1, damages.size());
        }
    }

    private static List<String> hookups(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            EvidenceLog log = new EvidenceLog();
            recording.replay(recording.outings().get(0), log);
            return log.lines().stream()
                    .filter(line -> line.startsWith("hookup"))
                    .toList();
        }
    }
}
