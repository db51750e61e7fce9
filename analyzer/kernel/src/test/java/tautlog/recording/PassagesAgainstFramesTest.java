package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.detect.ShaftReadings;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.DetectSettings;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** An afternoon's recording, in which slack line lasts for seconds, tells the detectors the same by passages as frame by frame. */
class PassagesAgainstFramesTest {
    private static final int SAMPLES = 300_000;
    private static final Instrument INSTRUMENT = Outings.instrument(500, 8_388_607, 6);
    private static final Calibration CALIBRATION = Calibration.of("0", "0.5");

    @TempDir
    Path folder;

    /** Writes down everything that is told, each kind in its order. */
    private static class Log implements FindingSink {
        final List<String> findings = new ArrayList<>();
        final List<String> cycles = new ArrayList<>();
        final List<String> readings = new ArrayList<>();
        final List<String> intervals = new ArrayList<>();

        @Override
        public void finding(Finding finding) {
            findings.add(finding.toString());
        }

        @Override
        public void second(Second second) {}

        @Override
        public boolean takesSeconds() {
            return false;
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
            cycles.add(rangeCounts + " " + twiceMeanCounts + " " + halves);
        }

        @Override
        public void shaftReading(long tick, double rpm) {
            readings.add(tick + " " + rpm);
        }

        @Override
        public void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
            int exactly = samples > 0 ? greatest.exactly() : 0;
            intervals.add(ticks + " " + rpm + " " + samples + " " + exactly + " " + clutch);
        }
    }

    /** Takes intervals of a slack line together, as meters do. */
    private static final class MeteredLog extends Log {
        private static final String SLACK = " slack up to ";

        @Override
        public boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
            for (int i = 1; i < readings.size(); i++) {
                long ticks = readings.tick(i) - readings.tick(i - 1);
                intervals.add(ticks + " " + readings.rpm(i - 1) + SLACK + atMost + " " + clutch);
            }
            return true;
        }

        /** What was said of interval {@code i}; {@code known} where it came as slack and {@code known} is that. */
        String interval(int i, String known) {
            String said = intervals.get(i);
            if (!said.contains(SLACK)) {
                return said;
            }
            String[] one = said.replace(SLACK, " ").split(" ");
            String[] other = known.split(" ");
            boolean isThat = one[0].equals(other[0])
                    && one[1].equals(other[1])
                    && Integer.parseInt(other[2]) > 0
                    && Integer.parseInt(other[3]) <= Integer.parseInt(one[2])
                    && one[3].equals(other[4]);
            return isThat ? known : said;
        }

        long slack() {
            return intervals.stream().filter(said -> said.contains(SLACK)).count();
        }
    }

    private static final class ByRuns extends ForwardedEvidence implements RunSink {
        private final Detection detection;
        private int passages;

        ByRuns(Detection detection) {
            super(detection);
            this.detection = detection;
        }

        @Override
        public void frame(long number, long tick, int flags, int n) {
            detection.frame(number, tick, flags, n);
        }

        @Override
        public void run(long number, int flags, StoredCounts counts) {
            if ((flags & FLAG_OPEN_BRIDGE) == 0) {
                detection.run(number, counts);
            }
        }

        @Override
        public boolean passage(Passage passage) {
            boolean taken = detection.passage(passage);
            passages += taken ? 1 : 0;
            return taken;
        }

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            RunSink.super.tension(number, tick, flags, counts, from, n);
        }
    }

    /** Ticks jitter, some frames are lost, the shaft stalls, stops, falls silent and comes late, for longer than anybody waits for it. */
    private Path record(long seed) throws RecordingException {
        Random random = new Random(seed);
        int[] counts = Traces.afternoon(seed, SAMPLES);
        int frame = 1 + random.nextInt(80);
        Path file = folder.resolve(seed + ".tautlog");
        long shaftTick = 0;
        long pulses = 0;
        long pulseTick = 0;
        long number = random.nextInt(1_000);
        try (RecordingWriter writer = RecordingWriter.open(file, "upper")) {
            OutingWriter outing = writer.begin(new OutingStart(
                    INSTRUMENT, "", CellCalibration.written(CALIBRATION), "test", OutingStart.Source.INSTRUMENT));
            int rpm = 540;
            long silentTo = 0;
            long lag = 0;
            for (int at = 0; at < SAMPLES; at += frame) {
                int n = Math.min(frame, SAMPLES - at);
                long tick = number * 2_000 + random.nextInt(3);
                lag = random.nextInt(500) > 0 ? lag : random.nextBoolean() ? 0 : random.nextInt(16_000_000);
                for (; shaftTick + 100_000 <= tick - lag; shaftTick += 100_000) {
                    rpm = random.nextInt(100) > 0 ? rpm : new int[] {0, 55, 300, 540, 1_000}[random.nextInt(5)];
                    silentTo = random.nextInt(800) > 0 ? silentTo : shaftTick + random.nextInt(30_000_000);
                    List<Long> ticks = new ArrayList<>();
                    for (pulseTick = Math.max(pulseTick, shaftTick);
                            rpm > 0 && pulseTick < shaftTick + 100_000;
                            pulseTick += 10_000_000 / rpm + random.nextInt(50)) {
                        ticks.add(pulseTick);
                    }
                    pulses += ticks.size();
                    if (shaftTick >= silentTo) {
                        outing.shaft(
                                shaftTick + 100_000,
                                pulses,
                                ticks.stream().mapToLong(Long::longValue).toArray(),
                                ticks.size());
                    }
                }
                if (random.nextInt(400) == 0) {
                    outing.clock(tick, 1_772_442_000_000_000L + tick);
                }
                if (random.nextInt(2_000) == 0) {
                    outing.hookup(
                            number + random.nextInt(n),
                            random.nextBoolean() ? "straight" : "round-the-corner",
                            HookupSource.SELECTOR);
                }
                if (random.nextInt(2_000) == 0) {
                    outing.input(number + random.nextInt(n), tick, 0, random.nextInt(8), random.nextInt(8));
                }
                outing.tension(number, tick, random.nextInt(3_000) == 0 ? 2 : 0, counts, at, n);
                number += n + (random.nextInt(2_000) == 0 ? random.nextInt(2_000) : 0);
            }
            outing.end();
            outing.commit();
        }
        return file;
    }

    private static Rig rig(boolean withDriveline) {
        Driveline driveline =
                new Driveline(0.09, 0.01, 4, 14, 0.75, 1_120, 540, OptionalDouble.empty(), OptionalDouble.empty());
        return new Rig(
                "upper",
                new BigDecimal("20000"),
                List.of(Rigs.hookup("straight", "8000"), Rigs.hookup("round-the-corner", "5000")),
                DetectSettings.DEFAULTS,
                Optional.empty(),
                withDriveline ? Optional.of(driveline) : Optional.empty());
    }

    @Test
    void tellTheSame() throws Exception {
        int passages = 0;
        long slack = 0;
        for (long seed = 0; seed < 8; seed++) {
            // given
            Rig rig = rig(seed % 4 > 0);
            Log byFrames = new Log();
            MeteredLog byPassages = new MeteredLog();
            try (Recording recording = Recording.open(record(seed))) {
                Outing outing = recording.outings().get(0);
                ByRuns runs = new ByRuns(new Detection(INSTRUMENT, rig, CALIBRATION, byPassages));

                // when
                recording.replay(outing, new Detection(INSTRUMENT, rig, CALIBRATION, byFrames));
                recording.replay(outing, runs);
                passages += runs.passages;
            }

            // then
            assertEquals(
                    byFrames.findings.stream().sorted().toList(),
                    byPassages.findings.stream().sorted().toList());
            assertEquals(byFrames.cycles, byPassages.cycles);
            assertEquals(byFrames.readings, byPassages.readings);
            assertEquals(byFrames.intervals.size(), byPassages.intervals.size());
            for (int i = 0; i < byFrames.intervals.size(); i++) {
                String known = byFrames.intervals.get(i);
                assertEquals(known, byPassages.interval(i, known));
            }
            slack += byPassages.slack();
            assertTrue(byFrames.findings.size() > 50, byFrames.findings.size() + " findings");
        }
        assertTrue(passages > 400, passages + " passages");
        assertTrue(slack > 4_000, slack + " intervals came as slack");
    }
}
