package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.fixtures.EvidenceLog;

class RecordingTest {
    @TempDir
    Path folder;

    private Path write(String name, Story story, Random commits) throws IOException {
        Path file = folder.resolve(name);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            tellWithCommits(story, outing, commits, 60);
            outing.end();
            outing.commit();
        }
        return file;
    }

    private static void tellWithCommits(Story story, OutingWriter outing, Random commits, int most) throws IOException {
        for (int from = 0; from < story.size(); ) {
            int to = Math.min(story.size(), from + 1 + commits.nextInt(most));
            story.tell(outing, from, to);
            outing.commit();
            from = to;
        }
    }

    private static List<String> replay(Recording recording, int outing) throws IOException {
        EvidenceLog log = new EvidenceLog();
        assertEquals(List.of(), recording.replay(recording.outings().get(outing), log));
        return log.lines();
    }

    @Test
    void replaysEveryCallAsItWasMade() throws IOException {
        Story story = Story.wild(1, 3_000);
        Path file = write("a.tautlog", story, new Random(2));

        try (Recording recording = Recording.open(file)) {
            List<String> expected = new ArrayList<>(story.lines());
            expected.add("end");
            assertEquals(expected, replay(recording, 0));
            Verification verification = recording.verify();
            assertEquals(List.of(), verification.damages());
            assertTrue(verification.gaps().size() > 10);
            assertEquals("winch-1", recording.winch());
            assertEquals(Story.START, recording.outings().get(0).start());
        }
    }

    @Test
    void sealsTheSameChainHoweverTheTailWasCut() throws IOException {
        Story story = Story.wild(3, 1_500);
        List<String> links = new ArrayList<>();
        for (int seed = 0; seed < 3; seed++) {
            try (Recording recording = Recording.open(write("cut-" + seed, story, new Random(seed)))) {
                links.add(recording.lastLink());
            }
        }
        assertEquals(links.get(0), links.get(1));
        assertEquals(links.get(0), links.get(2));
    }

    @Test
    void opensAfterThePowerWentAndKeepsEverythingCommitted() throws Exception {
        Story story = Story.wild(5, 2_000);
        Path file = folder.resolve("cut.tautlog");
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        OutingWriter outing = writer.begin(Story.START);
        tellWithCommits(story, outing, new Random(6), 40);
        String link = outing.lastLink();
        outing.mark(Long.MAX_VALUE, "never committed");
        writer.abandon();

        try (Recording recording = Recording.open(file)) {
            assertEquals(story.lines(), replay(recording, 0));
            assertEquals(link, recording.lastLink());
            assertEquals(List.of(), recording.verify().damages());
            assertFalse(recording.outings().get(0).ended());
        }
        try (RecordingWriter next = RecordingWriter.open(file, "winch-1")) {
            List<Outing> interrupted = next.interrupted();
            assertEquals(1, interrupted.size());
            OutingWriter resumed = next.resume(interrupted.get(0));
            assertEquals(link, resumed.sealedLink());
            resumed.end();
            resumed.commit();
            assertEquals(List.of(), next.interrupted());
            OutingWriter second = next.begin(Story.START);
            second.mark(1, "next");
            second.commit();
        }
        try (Recording recording = Recording.open(file)) {
            List<String> expected = new ArrayList<>(story.lines());
            expected.add("end");
            assertEquals(expected, replay(recording, 0));
            assertEquals(List.of("mark 1 next"), replay(recording, 1));
            assertFalse(recording.outings().get(0).ended());
            assertTrue(recording.outings().get(0).closed());
            assertEquals(List.of(), recording.verify().damages());
        }
    }

    @Test
    void opensACopyOfFileAndLogTakenWhileRecording() throws IOException {
        Story story = Story.plain(7, 700);
        Path file = folder.resolve("live.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            story.tell(outing);
            outing.commit();
            Path copy = Files.createDirectory(folder.resolve("copy")).resolve("live.tautlog");
            CopiedRecording.copy(file, copy);

            try (Recording recording = Recording.open(copy)) {
                assertEquals(story.lines(), replay(recording, 0));
                assertEquals(outing.lastLink(), recording.lastLink());
            }
        }
    }

    @Test
    void callsInOneViewSeeTheSameMoment() throws IOException {
        Path file = folder.resolve("live.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1");
                OpenOuting live = new OpenOuting(writer.begin(Story.START), Story.plain(4, 2_000))) {
            live.tell(0, 900);
            try (Recording recording = Recording.open(file)) {
                List<String> seen = recording.inOneView(() -> {
                    Outing first = recording.outings().get(0);
                    String fingerprint = recording.fingerprint(first);
                    live.tell(900, 2_000);
                    assertEquals(List.of(first), recording.outings());
                    assertEquals(fingerprint, recording.fingerprint(first));
                    return List.of(String.valueOf(first.samples()), fingerprint);
                });

                Outing now = recording.outings().get(0);
                assertTrue(now.samples() > Long.parseLong(seen.get(0)), "the view was let go");
                assertNotEquals(seen.get(1), recording.fingerprint(now));
            }
        }
    }

    /** Told part by part. */
    private record OpenOuting(OutingWriter outing, Story story) implements AutoCloseable {
        void tell(int from, int to) throws RecordingException {
            story.tell(outing, from, to);
            outing.commit();
        }

        @Override
        public void close() throws RecordingException {
            outing.end();
            outing.commit();
        }
    }

    @Test
    void aReplayGivesTheFingerprintThatTheRowsHave() throws IOException, SQLException {
        Path file = folder.resolve("two.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            for (int seed = 1; seed <= 2; seed++) {
                OutingWriter outing = writer.begin(Story.START);
                tellWithCommits(Story.wild(seed, 1_000), outing, new Random(seed), 60);
                if (seed == 1) {
                    outing.end();
                }
                outing.commit();
            }
        }
        change(file, "INSERT INTO finding (outing, kind, start, crc, json) VALUES (0, 'pull', 1, 2, '{}')");
        List<String> whole = fingerprints(file);
        assertNotEquals(whole.get(0), whole.get(1));
        for (String change : List.of(
                "evidence SET block = x'00' || substr(block, 2) WHERE seq = 2",
                "evidence SET link = zeroblob(32) WHERE seq = 2",
                "evidence SET span = span + 1 WHERE seq = 2",
                "evidence SET kind = 3 WHERE seq = 2",
                "evidence SET first = first + 1 WHERE seq = 2",
                "evidence SET last = last + 1 WHERE seq = 2",
                "evidence SET tick = tick + 1 WHERE seq = 2",
                "evidence SET last_tick = last_tick + 1 WHERE seq = 2",
                "evidence SET count = count + 1 WHERE seq = 2",
                "evidence SET seq = 0 WHERE seq = 2",
                "finding SET json = json || ' ' WHERE outing = 0",
                "finding SET start = start + 1 WHERE outing = 0",
                "finding SET crc = crc + 1 WHERE outing = 0")) {
            Path copy = Files.copy(file, folder.resolve("copy.tautlog"), StandardCopyOption.REPLACE_EXISTING);
            assertEquals(1, Math.min(1, change(copy, "UPDATE " + change)), change);
            List<String> changed = fingerprints(copy);
            assertNotEquals(whole.get(0), changed.get(0), change);
            assertEquals(whole.get(1), changed.get(1), change);
        }
        for (String change : List.of("tail SET span = span + 1", "tail SET blocks = x'00' || substr(blocks, 2)")) {
            Path copy = Files.copy(file, folder.resolve("copy.tautlog"), StandardCopyOption.REPLACE_EXISTING);
            assertEquals(1, Math.min(1, change(copy, "UPDATE " + change)), change);
            assertNotEquals(whole.get(1), fingerprints(copy).get(1), change);
        }
    }

    /** @return how many rows it changed */
    private static int change(Path file, String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement one = connection.createStatement()) {
            return one.executeUpdate(statement);
        }
    }

    /** Of each outing, asked for in both ways. */
    private static List<String> fingerprints(Path file) throws IOException {
        List<String> fingerprints = new ArrayList<>();
        try (Recording recording = Recording.open(file)) {
            for (Outing outing : recording.outings()) {
                String fingerprint = recording.fingerprint(outing);
                assertEquals(
                        fingerprint,
                        recording.replayWithFingerprint(outing, new RunLog()).fingerprint());
                fingerprints.add(fingerprint);
            }
        }
        return fingerprints;
    }
}
