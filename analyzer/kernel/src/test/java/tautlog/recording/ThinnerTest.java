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
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;

/** RECORDING.md, "Thinned". */
class ThinnerTest {
    private static final long ALL = Long.MAX_VALUE;
    private static final OptionalLong NOW = OptionalLong.of(1_778_000_000_000_000L);
    private static final int FRAMES_OF_TWO_BLOCKS = 700;

    /** What a test's outing is about; only the first two may be thinned. */
    private enum Outings {
        QUIET,
        WITH_PULLS,
        WITH_A_SHOCK,
        WITH_TROUBLE,
        WITH_A_FLAGGED_SECOND,
        WITHOUT_ONE_SECOND,
        IMPORTED;

        boolean mayBeThinned() {
            return this == QUIET || this == WITH_PULLS;
        }
    }

    @TempDir
    Path folder;

    private static final Finding.Pull PULL = new Finding.Pull(
            600,
            700,
            900,
            50_000,
            101,
            "straight",
            false,
            900,
            0,
            0,
            Known.NO,
            false,
            false,
            false,
            false,
            List.of(101L, 0L, 0L, 0L, 0L),
            101,
            0);

    private static void record(RecordingWriter writer, Outings kind, long seed, int frames) throws RecordingException {
        OutingStart start = kind == Outings.IMPORTED
                ? new OutingStart(
                        Story.INSTRUMENT,
                        Story.START.rigToml(),
                        Story.START.calibration(),
                        "tautlog 0.1.0",
                        OutingStart.Source.IMPORT)
                : Story.START;
        OutingWriter outing = writer.begin(start);
        Story story = Story.plain(seed, frames);
        for (int from = 0; from < story.size(); from += 500) {
            story.tell(outing, from, Math.min(story.size(), from + 500));
            outing.commit();
        }
        int seconds = kind == Outings.WITHOUT_ONE_SECOND ? frames / 20 - 1 : (frames + 19) / 20;
        for (int k = 0; k < seconds; k++) {
            int samples = Math.min(500, 25 * (frames - 20 * k));
            int flags = kind == Outings.WITH_A_FLAGGED_SECOND && k == 0 ? Second.OVER_LIMIT : Second.AT_MOST;
            outing.second(
                    new Second(k, 500 + 500L * k, -8, 8, 3, samples, OptionalDouble.of(540), "straight", 0.01, flags));
        }
        if (kind != Outings.QUIET) {
            outing.finding(PULL);
        }
        if (kind == Outings.WITH_A_SHOCK) {
            outing.finding(new Finding.Shock(510, 400, 520, 2_000, false, 0, "straight", false, false));
        }
        if (kind == Outings.WITH_TROUBLE) {
            outing.finding(new Finding.Trouble(Finding.TroubleKind.ONE_SAMPLE_PEAK, 520, 520));
        }
        outing.end();
        outing.commit();
    }

    private Path recorded(String name, int frames, Outings... kinds) throws RecordingException {
        Path file = folder.resolve(name + ".tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            for (int i = 0; i < kinds.length; i++) {
                record(writer, kinds[i], i, frames);
            }
        }
        return file;
    }

    /** Every row of the evidence but for the blocks, or only those blocks that are not samples of the outings named. */
    private static List<String> rows(Path file, String columns, String where) throws SQLException {
        List<String> rows = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("SELECT " + columns + " FROM " + where)) {
            while (found.next()) {
                StringBuilder row = new StringBuilder();
                for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
                    byte[] value = found.getBytes(i);
                    row.append(value == null ? "null" : HexFormat.of().formatHex(value))
                            .append(' ');
                }
                rows.add(row.toString());
            }
        }
        return rows;
    }

    private static Verification verify(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify();
        }
    }

    private static List<String> replay(Path file, int outing) throws RecordingException {
        EvidenceLog log = new EvidenceLog();
        try (Recording recording = Recording.open(file)) {
            assertEquals(List.of(), recording.replay(recording.outings().get(outing), log));
        }
        return new ArrayList<>(log.lines());
    }

    private static void change(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void takesOnlyReadingsOfOutingsThatToldNothingAndLeavesAllElseBitForBit() throws Exception {
        Random random = new Random(20_261_127);
        for (int day = 0; day < 10; day++) {
            // given: a day of random outings
            Outings[] kinds = random.ints(1 + random.nextInt(6), 0, Outings.values().length)
                    .mapToObj(kind -> Outings.values()[kind])
                    .toArray(Outings[]::new);
            Path file = recorded("day-" + day, 40 + random.nextInt(FRAMES_OF_TWO_BLOCKS), kinds);
            Path whole = folder.resolve("whole-" + day + ".tautlog");
            CopiedRecording.copy(file, whole);

            // when
            Thinned thinned = Thinner.thin(file, ALL, ALL, NOW);

            // then
            List<Integer> gone = new ArrayList<>();
            for (int i = 0; i < kinds.length; i++) {
                if (kinds[i].mayBeThinned()) {
                    gone.add(i);
                }
            }
            assertEquals(gone.size(), thinned.outings(), List.of(kinds)::toString);
            String in = gone.toString().replace('[', '(').replace(']', ')');
            String evidence = "seq, outing, span, kind, first, last, tick, last_tick, count, link";
            assertEquals(
                    rows(whole, evidence, "evidence ORDER BY seq"),
                    rows(file, evidence, "evidence WHERE kind <> 7 ORDER BY seq"));
            String untouched = "evidence WHERE kind <> 7 AND NOT (kind = 2 AND outing IN " + in + ") ORDER BY seq";
            assertEquals(rows(whole, "block", untouched), rows(file, "block", untouched));
            for (String table : List.of("recording", "seconds", "finding", "begun", "tail")) {
                assertEquals(rows(whole, "rowid, *", table), rows(file, "rowid, *", table), table);
            }
            isThinned(file, whole, kinds);
        }
    }

    private static void isThinned(Path file, Path whole, Outings[] kinds) throws RecordingException {
        Verification found = verify(file);
        assertEquals(List.of(), found.damages());
        assertEquals(
                Stream.of(kinds).filter(Outings::mayBeThinned).count(),
                found.thinned().size());
        found.thinned().forEach(one -> assertEquals("2026-05-05T16:53:20Z", one.time()));
        for (int i = 0; i < kinds.length; i++) {
            List<String> before = replay(whole, i);
            if (kinds[i].mayBeThinned()) {
                before.removeIf(line -> line.startsWith("tension "));
            }
            assertEquals(before, replay(file, i), kinds[i].name());
        }
    }

    @Test
    void givesTheRoomBackOldestFirstAndNoMoreThanIsWanted() throws IOException {
        // given
        Path file = recorded(
                "day", FRAMES_OF_TWO_BLOCKS, Outings.WITH_A_SHOCK, Outings.QUIET, Outings.WITH_PULLS, Outings.QUIET);
        long before = Files.size(file);

        // when
        Thinned once = Thinner.thin(file, 1, ALL, NOW);

        // then
        assertEquals(1, once.outings());
        assertEquals(25L * FRAMES_OF_TWO_BLOCKS, once.samples());
        assertEquals(before - once.bytes(), Files.size(file));
        // its counts, in whole pages, less the digests: 0.7 bytes a sample
        assertTrue(once.bytes() > 12_000, once::toString);
        assertEquals(1, verify(file).thinned().get(0).outing());

        // when: the rest
        assertEquals(2, Thinner.thin(file, ALL, ALL, NOW).outings());
        assertEquals(Thinned.NOTHING, Thinner.thin(file, ALL, ALL, NOW));

        // then
        assertTrue(verify(file).isIntact());
        assertEquals(List.of(file), filesThere());
    }

    private List<Path> filesThere() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void tellsTheTimeOfAThinnedSampleAsBefore() throws RecordingException {
        // given
        Path file = recorded("day", 3 * FRAMES_OF_TWO_BLOCKS, Outings.QUIET);
        List<Long> before = ticks(file);

        // when
        Thinner.thin(file, ALL, ALL, NOW);

        // then: the frames' ticks wander by up to 2 µs each, half of 655 frames apart at most from a tick that is known
        List<Long> after = ticks(file);
        for (int i = 0; i < before.size(); i++) {
            assertEquals(before.get(i), after.get(i), 200, "sample " + i);
        }
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            assertTrue(outing.thinned());
            assertThrows(IllegalArgumentException.class, () -> recording.tickOf(outing, outing.lastNumber() + 1));
            assertThrows(IllegalArgumentException.class, () -> recording.tickOf(outing, outing.firstNumber() - 1));
        }
    }

    private static List<Long> ticks(Path file) throws RecordingException {
        List<Long> ticks = new ArrayList<>();
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            for (long number = outing.firstNumber(); number <= outing.lastNumber(); number += 97) {
                ticks.add(recording.tickOf(outing, number));
            }
        }
        return ticks;
    }

    @Test
    void letsAPublisherThatWasAwayGoOnWithTheSameSecondsAndTimes() throws RecordingException {
        // given: one who has read to the middle, one who has not begun
        Path file = recorded("day", 2 * FRAMES_OF_TWO_BLOCKS, Outings.WITH_PULLS);
        RecordingTrail followed = new RecordingTrail();
        Said before = said(file, followed);

        // when
        Thinner.thin(file, ALL, ALL, NOW);

        // then
        for (RecordingTrail trail : List.of(followed, new RecordingTrail())) {
            Said after = said(file, trail);
            assertEquals(before.findings().size(), after.findings().size());
            assertEquals(2 * FRAMES_OF_TWO_BLOCKS / 20, after.seconds().size());
            for (int i = 0; i < after.seconds().size(); i++) {
                assertEquals(
                        before.seconds().get(i).second(), after.seconds().get(i).second());
                assertEquals(
                        before.seconds().get(i).tick(), after.seconds().get(i).tick(), 200);
            }
        }
    }

    private static Said said(Path file, RecordingTrail trail) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            recording.follow(trail);
            return recording.said(trail, trail.outings().get(0), SaidMark.NONE, 10_000);
        }
    }

    @Test
    void noticesEveryByteOfAStubThatIsFlipped() throws Exception {
        // given
        Path file = recorded("day", 40, Outings.QUIET);
        Thinner.thin(file, ALL, ALL, NOW);
        byte[] stub = HexFormat.of()
                .parseHex(rows(file, "block", "evidence WHERE kind = 2").get(0).strip());
        assertEquals(Block.HEADER + 32 + 4, stub.length);

        for (int at = 0; at < stub.length; at++) {
            // when
            byte[] flipped = stub.clone();
            flipped[at] ^= 0x10;
            change(file, "UPDATE evidence SET block = x'" + HexFormat.of().formatHex(flipped) + "' WHERE kind = 2");

            // then
            assertFalse(verify(file).isIntact(), "byte " + at);
        }
    }

    @Test
    void noticesWhatWasMadeUpInPlaceOfWhatIsGone() throws Exception {
        // given: a stub with another digest and a checksum that fits; a block of other samples
        Path file = recorded("day", 40, Outings.QUIET, Outings.WITH_A_SHOCK);
        Thinner.thin(file, ALL, ALL, NOW);
        Block stub = Block.read(
                HexFormat.of()
                        .parseHex(rows(file, "block", "evidence WHERE seq = 2")
                                .get(0)
                                .strip()),
                0);
        Path faked = folder.resolve("faked.tautlog");

        // when, then: each shows in the chain
        CopiedRecording.copy(file, faked);
        String other = HexFormat.of().formatHex(stub.thinned(new byte[32]).bytes());
        change(faked, "UPDATE evidence SET block = x'" + other + "' WHERE seq = 2");
        assertTrue(verify(faked).damages().get(0).reason().contains("its link does not follow"));

        FrameTable calm = new FrameTable();
        for (int frame = 0; frame < 40; frame++) {
            calm.add(500 + 25L * frame, 1_000_000 + 50_000L * frame, 0, new int[25], 0, 25);
        }
        Span span = new Span(0, 1);
        for (int frame = 0; frame < calm.frames; frame++) {
            span.samples.add(calm.number[frame], calm.tick[frame], 0, calm.counts, calm.from[frame], 25);
        }
        String made =
                HexFormat.of().formatHex(new SpanCodec().evidence(span).get(0).bytes());
        change(faked, "UPDATE evidence SET block = x'" + made + "' WHERE seq = 2");
        assertFalse(verify(faked).isIntact());

        // a block that vanished without a word, and a word without it
        CopiedRecording.copy(file, folder.resolve("silent.tautlog"));
        change(folder.resolve("silent.tautlog"), "DELETE FROM evidence WHERE kind = 7");
        assertTrue(verify(folder.resolve("silent.tautlog")).damages().toString().contains("no row says why"));
        EvidenceLog log = new EvidenceLog();
        try (Recording recording = Recording.open(folder.resolve("silent.tautlog"))) {
            assertEquals(1, recording.replay(recording.outings().get(0), log).size());
        }

        // what was said live, on which the figures rest now
        for (String sql : List.of(
                "DELETE FROM seconds WHERE outing = 0",
                "UPDATE evidence SET tick = tick + 1 WHERE seq = 2",
                "INSERT INTO finding SELECT 99, 0, kind, start, json, crc FROM finding WHERE kind = 'shock'")) {
            CopiedRecording.copy(file, faked);
            change(faked, sql);
            assertTrue(verify(faked).damages().toString().contains("after the outing was thinned"), sql);
        }
    }

    @Test
    void leavesAFileAloneThatIsDamagedOrWrittenOrHasNoRoomBesideIt() throws Exception {
        // given
        Path file = recorded("day", 40, Outings.QUIET, Outings.QUIET);

        // then: no room
        long size = Files.size(file);
        RecordingException full = assertThrows(RecordingException.class, () -> Thinner.thin(file, ALL, 1_000, NOW));
        assertTrue(String.valueOf(full.getMessage()).contains("KiB for the smaller copy"), full::getMessage);

        // being written
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            assertThrows(RecordingException.class, () -> Thinner.thin(file, ALL, ALL, NOW));
            writer.begin(Story.START);
        }
        // an outing that is not over
        assertEquals(Thinned.NOTHING, Thinner.thin(file, ALL, ALL, NOW));
        assertTrue(Files.size(file) >= size);
        assertEquals(List.of(file), filesThere());

        // damaged: only what is whole is thinned
        Path rotten = recorded("rotten", 40, Outings.QUIET, Outings.QUIET);
        change(rotten, "UPDATE evidence SET block = substr(block, 1, 60) || x'00' || substr(block, 62) WHERE seq = 2");
        List<Damage> damages = verify(rotten).damages();
        assertEquals(1, damages.size());
        assertEquals(1, Thinner.thin(rotten, ALL, ALL, NOW).outings());
        assertEquals(damages, verify(rotten).damages());
        assertEquals(1, verify(rotten).thinned().get(0).outing());
    }

    @Test
    void thinsWhatAReaderKeptInLogModeAndGoesOnForReaders() throws Exception {
        // given: a reader is at work while the recording is closed
        Path file = folder.resolve("day.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        record(writer, Outings.QUIET, 1, 40);
        try (Recording reader = Recording.open(file)) {
            Outing outing = reader.outings().get(0);
            writer.close();
            assertTrue(reader.isInLogMode());
            RecordingException refused =
                    assertThrows(RecordingException.class, () -> Thinner.thin(file, ALL, ALL, NOW));
            assertTrue(String.valueOf(refused.getMessage()).contains("another program reads it"), "to be tried again");
            assertEquals(List.of(), reader.replay(outing, new EvidenceLog()));
        }

        // when: it is gone, another came
        try (Recording reader = Recording.open(file)) {
            reader.outings();
        }
        assertEquals(1, Thinner.thin(file, ALL, ALL, NOW).outings());

        // then: it goes on as a recording
        try (RecordingWriter again = RecordingWriter.open(file, "winch-1")) {
            record(again, Outings.WITH_A_SHOCK, 2, 40);
        }
        assertTrue(verify(file).isIntact());
        assertEquals(1, verify(file).thinned().size());
    }
}
