package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;
import tautlog.sample.SampleTicks;

class SpokenTest {
    private static final List<Finding> FINDINGS = List.of(
            new Finding.Pull(
                    1,
                    9,
                    5,
                    -7L,
                    9,
                    "a \"quoted\" ½",
                    true,
                    4,
                    1,
                    2,
                    Known.UNKNOWN,
                    true,
                    true,
                    false,
                    true,
                    List.of(1L, 2L, 3L, 4L, Long.MAX_VALUE),
                    6,
                    7),
            new Finding.Pull(
                    1,
                    9,
                    5,
                    -7L,
                    9,
                    "curved",
                    false,
                    4,
                    0,
                    0,
                    Known.NO,
                    false,
                    false,
                    false,
                    false,
                    List.of(9L, 0L, 0L, 0L, 0L),
                    0,
                    0,
                    BigInteger.TWO.pow(62).multiply(BigInteger.TEN)),
            new Finding.Overload(2, 3, 4, Integer.MIN_VALUE, "b", false, true, false, true, false),
            new Finding.Shock(3, 4, 5, 6, true, Long.MIN_VALUE, "c", false, true),
            new Finding.Jolt(4, 5, 6, 7, "d", true),
            new Finding.Drop(5, 6, 7, 8, Known.YES, Finding.ShaftAfterDrop.RAN_UP, Known.NO, Known.UNKNOWN),
            new Finding.Stall(6, 7, 8, Finding.StallEnd.PULL_ENDED, 0.1 + 0.2, Math.nextUp(540.0), 9),
            new Finding.Trouble(Finding.TroubleKind.ONE_SAMPLE_PEAK, 7, 7));

    @TempDir
    Path folder;

    private static List<Second> seconds() {
        List<Second> seconds = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            OptionalDouble rpm = switch (k % 3) {
                case 0 -> OptionalDouble.empty();
                case 1 -> OptionalDouble.of(0);
                default -> OptionalDouble.of(540 + 0.1 * k);
            };
            seconds.add(new Second(
                    2L * k, 500 + 1_000L * k, -k, 9 * k, -17L * k, 500 - k, rpm, "h" + k / 10, k / 7.0, k % 32));
        }
        for (long n = 2; n < 1_000_000_000_000L; n *= 7) {
            // two samples far apart, and two that are the same
            long count = Math.min(n, Integer.MAX_VALUE);
            seconds.add(curved(-count, count));
            seconds.add(curved(count, count));
        }
        seconds.add(new Second(
                99,
                1L << 40,
                Integer.MIN_VALUE,
                Integer.MAX_VALUE,
                Long.MIN_VALUE,
                1,
                OptionalDouble.of(-0.0),
                "",
                Double.POSITIVE_INFINITY,
                31));
        return seconds;
    }

    private static Second curved(long one, long other) {
        BigInteger squares = BigInteger.valueOf(one * one).add(BigInteger.valueOf(other * other));
        return new Second(7, 8, (int) one, (int) other, one + other, 2, OptionalDouble.of(9), "c", 0.5, 0, squares);
    }

    @Test
    void aSumOfSquaresTakesNoRoomUnderAStraightLine() {
        assertFalse(FindingJson.write(FINDINGS.get(0)).contains("quares"), FindingJson.write(FINDINGS.get(0)));
        assertTrue(FindingJson.write(FINDINGS.get(1)).contains("\"countSquares\":46116860184273879040"));

        ByteWriter straight = new ByteWriter();
        SecondCodec.encode(List.of(new Second(0, 0, 5, 6, 11, 2, OptionalDouble.empty(), "", 0.5, 0)), straight);
        ByteWriter curve = new ByteWriter();
        SecondCodec.encode(
                List.of(new Second(0, 0, 5, 6, 11, 2, OptionalDouble.empty(), "", 0.5, 0, BigInteger.valueOf(25 + 36))),
                curve);
        // the spread 2 · 61 − 11² = 1: its length and one byte
        assertEquals(straight.size() + 2, curve.size());
    }

    @Test
    void givesBackEveryFindingAndSecondSealedOrNot() throws IOException {
        Path file = folder.resolve("s.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            FINDINGS.forEach(outing::finding);
            List<Second> seconds = seconds();
            for (int i = 0; i < seconds.size(); i++) {
                outing.second(seconds.get(i));
                if (i % 7 == 0) {
                    outing.commit();
                }
            }
            outing.commit();
            assertSpoken(file);
            outing.end();
            outing.commit();
        }
        assertSpoken(file);
    }

    private static void assertSpoken(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            assertEquals(FINDINGS, recording.findings(outing));
            assertEquals(seconds(), recording.seconds(outing));
            assertTrue(recording.verify().isIntact());
        }
    }

    @Test
    void knowsTheTickOfEverySample() throws IOException {
        Path file = folder.resolve("t.tautlog");
        Story story = Story.plain(9, 800);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            story.tell(outing);
            outing.commit();

            try (Recording recording = Recording.open(file)) {
                Outing read = recording.outings().get(0);
                SampleTicks ticks = new SampleTicks(Story.INSTRUMENT);
                EvidenceLog log = new EvidenceLog();
                story.tell(log);
                for (String line : log.lines()) {
                    String[] words = line.split(" ");
                    if (words[0].equals("tension")) {
                        long number = Long.parseLong(words[1]);
                        ticks.frame(number, Long.parseLong(words[2]), 25);
                        for (int k = 0; k < 25; k += 8) {
                            assertEquals(ticks.tickOf(k), recording.tickOf(read, number + k));
                        }
                    }
                }
                assertThrows(IllegalArgumentException.class, () -> recording.tickOf(read, 499));
                assertThrows(IllegalArgumentException.class, () -> recording.tickOf(read, 1 << 30));
            }
        }
    }

    /** The same samples and the same other calls, whether told by frames or by runs. */
    @Test
    void tellsTheSameByRuns() throws IOException {
        Path file = folder.resolve("r.tautlog");
        Story story = Story.wild(11, 2_500);
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            story.tell(outing);
            outing.commit();
        }
        try (Recording recording = Recording.open(file)) {
            RunLog runs = new RunLog();
            recording.replay(recording.outings().get(0), runs);
            CountLog frames = new CountLog();
            recording.replay(recording.outings().get(0), frames);
            assertEquals(frames.samples, runs.samples);
            assertEquals(
                    story.lines().stream()
                            .filter(line -> !line.startsWith("tension"))
                            .toList(),
                    runs.log.lines());
        }
    }
}
