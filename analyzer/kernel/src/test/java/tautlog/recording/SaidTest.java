package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.Said.SaidFinding;
import tautlog.recording.Said.SaidSecond;
import tautlog.sample.ZeroSource;

/** Following what is said, from a mark on, while it is written. */
class SaidTest {
    private static final int HERTZ = 500;
    private static final long TICKS_A_SAMPLE = 2_000;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("a.tautlog");
    }

    private static Second second(long index) {
        return new Second(index, 500 + index * HERTZ, -3, 9, 77, HERTZ, OptionalDouble.of(540), "straight", 0.5, 0);
    }

    /** One second of samples, what is said of it, a clock fix every ten. */
    private static void tell(OutingWriter outing, long index) {
        long number = 500 + index * HERTZ;
        if (index % 10 == 0) {
            outing.clock(number * TICKS_A_SAMPLE, 1_777_881_600_000_000L + number * TICKS_A_SAMPLE);
        }
        for (int frame = 0; frame < HERTZ; frame += 25) {
            int[] counts = new int[25];
            java.util.Arrays.fill(counts, (int) index);
            outing.tension(number + frame, (number + frame) * TICKS_A_SAMPLE, 0, counts, 0, 25);
        }
        outing.second(second(index));
        if (index % 7 == 3) {
            outing.finding(new Finding.Shock(number + 2, 4, number + 100, 6, false, 0, "straight", false, false));
        }
    }

    @Test
    void tellsEachOnceAndInOrderToWhoFollowsWhileItIsWritten() throws IOException {
        Random random = new Random(4);
        List<SaidSecond> seconds = new ArrayList<>();
        List<SaidFinding> findings = new ArrayList<>();
        RecordingTrail trail = new RecordingTrail();
        SaidMark mark = SaidMark.NONE;
        try (RecordingWriter writer = RecordingWriter.open(file(), "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            for (int index = 0; index < 300; index++) {
                tell(outing, index);
                outing.commit();
                if (random.nextInt(5) == 0) {
                    mark = follow(trail, mark, seconds, findings);
                }
            }
            outing.end();
            outing.commit();
            for (int i = 0; i < 5; i++) {
                mark = follow(trail, mark, seconds, findings);
            }
        }

        try (Recording recording = Recording.open(file())) {
            Outing outing = recording.outings().get(0);
            assertEquals(
                    recording.seconds(outing),
                    seconds.stream().map(SaidSecond::second).toList());
            assertEquals(
                    recording.findings(outing),
                    findings.stream().map(SaidFinding::finding).toList());
            for (SaidSecond said : seconds) {
                assertEquals(recording.tickOf(outing, said.second().firstNumber()), said.tick());
            }
            for (SaidFinding said : findings) {
                assertEquals(recording.tickOf(outing, said.finding().startNumber()), said.startTick());
                assertEquals(recording.tickOf(outing, said.finding().lastNumber()), said.lastTick());
                assertEquals(OptionalInt.of((int) (said.finding().startNumber() - 500) / HERTZ), said.startCount());
            }
            assertEquals(0, recording.saidBehind(trail.outings().get(0), mark));
        }
        assertTrue(trail.outings().get(0).closed());
    }

    private SaidMark follow(RecordingTrail trail, SaidMark from, List<SaidSecond> seconds, List<SaidFinding> findings)
            throws IOException {
        SaidMark mark = from;
        try (Recording recording = Recording.open(file())) {
            recording.follow(trail);
            OutingTrail outing = trail.outings().get(0);
            Said said = recording.said(trail, outing, mark, 40);
            seconds.addAll(said.seconds());
            findings.addAll(said.findings());
            for (SaidSecond second : said.seconds()) {
                mark = new SaidMark(second.second().index(), mark.finding());
            }
            for (SaidFinding finding : said.findings()) {
                mark = new SaidMark(mark.second(), finding.id());
            }
        }
        return mark;
    }

    @Test
    void datesATickTheSameWhenItIsAskedLater() throws IOException {
        RecordingTrail trail = new RecordingTrail();
        try (RecordingWriter writer = RecordingWriter.open(file(), "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            outing.commit();
            read(trail);
            assertFalse(trail.outings().get(0).hasClock());

            outing.clock(1_000, 1_777_881_600_000_000L);
            outing.commit();
            read(trail);
            var early = trail.outings().get(0).utcMicros(2_000_000);
            outing.clock(3_000_000, 1_777_881_603_100_000L); // later it is known better
            outing.commit();
            read(trail);

            assertTrue(early.isPresent());
            assertEquals(early, trail.outings().get(0).utcMicros(2_000_000));
        }
    }

    @Test
    void takesTheMovedZeroOffTheCountAtTheStartOfAShock() throws IOException {
        try (RecordingWriter writer = RecordingWriter.open(file(), "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            outing.zero(1_000, -5, ZeroSource.SLACK);
            for (int index = 0; index < 4; index++) {
                tell(outing, index);
            }
            outing.commit();
            RecordingTrail trail = read(new RecordingTrail());

            try (Recording recording = Recording.open(file())) {
                Said said = recording.said(trail, trail.outings().get(0), SaidMark.NONE, 10);
                assertEquals(OptionalInt.of(8), said.findings().get(0).startCount());
            }
        }
    }

    private RecordingTrail read(RecordingTrail trail) throws IOException {
        try (Recording recording = Recording.open(file())) {
            recording.follow(trail);
        }
        return trail;
    }

    @Test
    void keepsItsIdWhenItsFileIsRenamedAndGoesOn() throws IOException {
        RecordingWriter.open(file(), "winch-1").close();
        RecordingWriter.open(folder.resolve("b.tautlog"), "winch-1").close();
        String id = id(file());
        assertTrue(id.matches("[0-9a-f]{16}"), id);
        assertNotEquals(id, id(folder.resolve("b.tautlog")));

        Path renamed = Files.move(file(), folder.resolve("c.tautlog"));
        RecordingWriter.open(renamed, "winch-1").close();

        assertEquals(id, id(renamed));
    }

    private static String id(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            return recording.id();
        }
    }
}
