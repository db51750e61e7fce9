package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** A replay by runs tells what one by frames does: every call in its order, every sample between the same events. */
class ReplayByRunsTest {
    private static final int OUTINGS = Integer.getInteger("tautlog.replays", 16);

    @TempDir
    Path folder;

    /** Calls but for the samples, in their order; and each sample with how many events came before it. */
    private static class ByFrames extends EvidenceLog {
        final List<String> samples = new ArrayList<>();
        private int seen;
        private int events;

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            announced(number, tick, flags, n);
            for (int i = 0; i < n; i++) {
                sample(number + i, flags, counts[from + i]);
            }
        }

        final void announced(long number, long tick, int flags, int n) {
            lines.add("frame " + number + " " + tick + " " + flags + " " + n);
        }

        final void samples(long number, int flags, StoredCounts stored) {
            int[] counts = new int[stored.size()];
            stored.copyTo(counts, 0);
            for (int i = 0; i < counts.length; i++) {
                sample(number + i, flags, counts[i]);
            }
        }

        final void sample(long number, int flags, int count) {
            for (; seen < lines.size(); seen++) {
                String line = lines.get(seen);
                events += line.startsWith("frame ") || line.startsWith("shaft ") ? 0 : 1;
            }
            samples.add(number + " f" + flags + " " + count + " after " + events);
        }
    }

    private static final class ByRuns extends ByFrames implements RunSink {
        private long waiting;

        @Override
        public void frame(long number, long tick, int flags, int n) {
            announced(number, tick, flags, n);
            waiting += n;
        }

        @Override
        public void run(long number, int flags, StoredCounts stored) {
            int n = stored.size();
            assertTrue(n <= 128 && n <= waiting, n + " samples of " + waiting);
            samples(number, flags, stored);
            waiting -= n;
        }

        @Override
        public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
            assertTrue(waiting < 128, waiting + " samples come after a shaft frame that came after them");
            super.shaft(tick, pulses, pulseTicks, n);
        }

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            RunSink.super.tension(number, tick, flags, counts, from, n);
        }
    }

    /** Takes every other passage, apart again: its frames, then its shaft frames, then its samples. */
    private static final class ByPassages extends ByFrames implements RunSink {
        private final Random random = new Random(5);
        private long announcedTo;
        private long next;
        private int passages;

        @Override
        public void frame(long number, long tick, int flags, int n) {
            announced(number, tick, flags, n);
            announcedTo = number + n;
        }

        @Override
        public void run(long number, int flags, StoredCounts stored) {
            int n = stored.size();
            assertTrue(number + n <= announcedTo, "a frame was not announced");
            samples(number, flags, stored);
            next = number + n;
        }

        @Override
        public boolean passage(Passage passage) {
            if (random.nextBoolean()) {
                return false;
            }
            passages++;
            long expected = passage.frames() == 0 ? announcedTo : passage.frameNumber(0);
            for (int i = 0; i < passage.frames(); i++) {
                assertEquals(expected, passage.frameNumber(i), "a gap between frames");
                frame(passage.frameNumber(i), passage.frameTick(i), 0, passage.frameLength(i));
                expected += passage.frameLength(i);
            }
            for (int i = 0; i < passage.shaftFrames(); i++) {
                int from = passage.pulsesFrom(i);
                shaft(
                        passage.shaftTick(i),
                        passage.pulses(i),
                        Arrays.copyOfRange(passage.pulseTicks(), from, from + passage.pulsesIn(i)),
                        passage.pulsesIn(i));
            }
            takeRuns(passage);
            return true;
        }

        private void takeRuns(Passage passage) {
            int least = Integer.MAX_VALUE;
            int greatest = Integer.MIN_VALUE;
            long number = passage.first();
            for (int i = 0; i < passage.runs(); i++) {
                StoredCounts stored = passage.run(i);
                least = Math.min(least, stored.least());
                greatest = Math.max(greatest, stored.greatest());
                run(number, 0, stored);
                number += stored.size();
            }
            assertEquals(passage.first() + passage.samples(), next);
            assertEquals(least, passage.least());
            assertEquals(greatest, passage.greatest());
            assertTrue(passage.samples() <= Passage.MOST);
        }

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            RunSink.super.tension(number, tick, flags, counts, from, n);
        }
    }

    private static List<String> shafts(ByFrames told) {
        return told.lines().stream().filter(line -> line.startsWith("shaft ")).toList();
    }

    private static List<String> withoutShafts(ByFrames told) {
        return told.lines().stream().filter(line -> !line.startsWith("shaft ")).toList();
    }

    private static int assertToldAlikeByPassages(Path file, String what) throws IOException {
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            ByFrames frames = new ByFrames();
            List<Damage> damages = recording.replay(outing, frames);
            ByPassages passages = new ByPassages();

            assertEquals(damages, recording.replay(outing, passages), what);

            assertEquals(withoutShafts(frames), withoutShafts(passages), what);
            assertEquals(shafts(frames), shafts(passages), what);
            assertEquals(frames.samples, passages.samples, what);
            return passages.passages;
        }
    }

    private Path record(long seed) throws IOException {
        Random random = new Random(seed);
        Path file = folder.resolve(seed + ".tautlog");
        Story story = Story.wild(seed, 100 + random.nextInt(1_900));
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            for (int from = 0; from < story.size(); ) {
                int to = Math.min(story.size(), from + 1 + random.nextInt(400));
                story.tell(outing, from, to);
                outing.commit();
                from = to;
            }
            if (random.nextBoolean()) {
                outing.end();
                outing.commit();
            } else {
                writer.abandon();
            }
        }
        return file;
    }

    /** Returns how many damages there are. */
    private static int assertToldAlike(Path file, String what) throws IOException {
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            ByFrames frames = new ByFrames();
            List<Damage> damages = recording.replay(outing, frames);
            ByRuns runs = new ByRuns();

            assertEquals(damages, recording.replay(outing, runs), what);

            assertEquals(frames.lines(), runs.lines(), what);
            assertEquals(frames.samples, runs.samples, what);
            assertEquals(0, runs.waiting, what);
            return damages.size();
        }
    }

    /** Spoils one block in two of those behind the start; every other one so that its checksum fits. */
    private static void spoil(Path file, Random random) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery("SELECT seq, block FROM evidence WHERE kind IN (2, 3, 4)");
                PreparedStatement update = connection.prepareStatement("UPDATE evidence SET block = ? WHERE seq = ?")) {
            List<Runnable> spoiled = new ArrayList<>();
            while (rows.next()) {
                long seq = rows.getLong(1);
                byte[] bytes = rows.getBytes(2);
                if (random.nextBoolean()) {
                    byte[] after = random.nextBoolean() ? forged(bytes, random) : flipped(bytes, random);
                    spoiled.add(() -> write(update, seq, after));
                }
            }
            spoiled.forEach(Runnable::run);
        }
    }

    private static byte[] flipped(byte[] bytes, Random random) {
        bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        return bytes;
    }

    private static byte[] forged(byte[] bytes, Random random) {
        try {
            Block block = Block.read(bytes, 0);
            byte[] content = block.content().raw(block.content().left());
            ByteWriter spoiled = new ByteWriter();
            spoiled.raw(flipped(content, random), 0, content.length - random.nextInt(2));
            return Block.of(block.kind(), block.outing(), block.span(), block.first(), block.count(), spoiled)
                    .bytes();
        } catch (DamagedBlockException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void write(PreparedStatement update, long seq, byte[] block) {
        try {
            update.setBytes(1, block);
            update.setLong(2, seq);
            update.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void tellsTheSameAsByFrames() throws IOException {
        for (long seed = 0; seed < OUTINGS; seed++) {
            assertEquals(0, assertToldAlike(record(seed), "seed " + seed));
        }
    }

    @Test
    void tellsTheSameAsByFramesOfWhatDamageLeft() throws Exception {
        int damages = 0;
        for (long seed = 100; seed < 100 + OUTINGS; seed++) {
            Path file = record(seed);
            spoil(file, new Random(seed));
            damages += assertToldAlike(file, "seed " + seed);
        }
        assertTrue(damages > OUTINGS / 2, damages + " damages");
    }

    @Test
    void passagesHoldWhatIsToldByFrames() throws Exception {
        int passages = 0;
        for (long seed = 0; seed < OUTINGS; seed++) {
            Path file = record(seed);
            passages += assertToldAlikeByPassages(file, "seed " + seed);
            spoil(file, new Random(seed));
            assertToldAlikeByPassages(file, "spoiled, seed " + seed);
        }
        assertTrue(passages > OUTINGS, passages + " passages");
    }
}
