package tautlog.desk.pyramid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.recording.Outing;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;

/** Held against a list of all samples: whatever the zoom, every column has exactly the extremes of its time. */
class OutingPyramidTest {
    private static final Calibration CALIBRATION = Calibration.of("12.5", "0.5");

    @TempDir
    Path folder;

    private static Scale scale(Outing outing, Calibration now) {
        return new Scale(
                outing.start().instrument(),
                CALIBRATION,
                now,
                tick -> outing.utcMicros(tick).orElseThrow());
    }

    private static Band show(Path file, OutingPyramid pyramid, Calibration now, long from, long to, int columns)
            throws IOException {
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            Band tension = new Band(from, to, columns);
            Band shaft = new Band(from, to, columns);
            pyramid.show(outing, scale(outing, now), () -> Recording.open(file), tension, shaft);
            return tension;
        }
    }

    private static OutingPyramid follow(Path file, OutingPyramid pyramid) throws IOException {
        try (Recording recording = Recording.open(file)) {
            pyramid.follow(recording, recording.outings().get(0));
        }
        return pyramid;
    }

    private static OutingPyramid begin(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            return OutingPyramid.of(recording.outings().get(0));
        }
    }

    private static List<SampleList.Sample> all(Path file, Calibration now) throws IOException {
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            return SampleList.of(recording, outing, scale(outing, now), CALIBRATION);
        }
    }

    private static void compare(List<SampleList.Sample> all, Band band) {
        long counted = 0;
        for (int i = 0; i < band.columns(); i++) {
            if (band.samples(i) == 0) {
                continue;
            }
            long begin = band.begin(i);
            long end = band.end(i);
            List<SampleList.Sample> inside = all.subList(from(all, begin), from(all, end));
            if (begin == end || isOfSamples(band)) {
                inside = all.subList(from(all, begin), from(all, end + 1));
            }
            assertEquals(inside.size(), band.samples(i), "samples of column " + i);
            assertEquals(
                    inside.stream()
                            .mapToDouble(SampleList.Sample::newtons)
                            .max()
                            .orElseThrow(),
                    band.greatest(i));
            assertEquals(
                    inside.stream()
                            .mapToDouble(SampleList.Sample::newtons)
                            .min()
                            .orElseThrow(),
                    band.least(i));
            counted += inside.size();
        }
        long asked = all.stream()
                .filter(s -> s.micros() >= band.from() && s.micros() < band.to())
                .count();
        assertTrue(counted >= asked, counted + " of " + asked);
    }

    /** Columns of single samples end with a sample, those of buckets before the next one. */
    private static boolean isOfSamples(Band band) {
        double perColumn = (band.to() - band.from()) / 1e6 / band.columns() * RandomOuting.HERTZ;
        return perColumn < Stretch.SAMPLES;
    }

    /** The index of the first sample at {@code micros} or later. */
    private static int from(List<SampleList.Sample> all, long micros) {
        int low = 0;
        int high = all.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (all.get(middle).micros() < micros) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Test
    void everyColumnOfAnyZoomHasTheExtremesOfItsTime() throws IOException {
        for (long seed = 1; seed <= 4; seed++) {
            Path file = folder.resolve("w" + seed + ".tautlog");
            RandomOuting.write(file, seed, 4_000);
            OutingPyramid pyramid = follow(file, begin(file));
            Random random = new Random(seed);
            for (Calibration now : List.of(CALIBRATION, Calibration.of("-30", "2"))) {
                List<SampleList.Sample> all = all(file, now);
                long first = all.get(0).micros();
                long last = all.get(all.size() - 1).micros() + 1;
                for (int zoom = 0; zoom < 40; zoom++) {
                    double length = (last - first) * Math.pow(10, -5 * random.nextDouble());
                    long from = first + (long) ((last - first - length) * random.nextDouble());
                    compare(
                            all,
                            show(
                                    file,
                                    pyramid,
                                    now,
                                    from,
                                    from + Math.max(100, (long) length),
                                    1 + random.nextInt(60)));
                }
            }
        }
    }

    @Test
    void aPeakOfOneSampleIsInEveryZoomFromTheWholeToItself() throws IOException {
        Path file = folder.resolve("w.tautlog");
        RandomOuting.write(file, 77, 8_000);
        OutingPyramid pyramid = follow(file, begin(file));
        List<SampleList.Sample> all = all(file, CALIBRATION);
        SampleList.Sample peak = all.stream()
                .max(java.util.Comparator.comparingDouble(SampleList.Sample::newtons))
                .orElseThrow();
        for (double length =
                        2.0 * (all.get(all.size() - 1).micros() - all.get(0).micros());
                length > 900;
                length /= 3) {
            Band band = show(
                    file,
                    pyramid,
                    CALIBRATION,
                    peak.micros() - (long) (length / 3),
                    peak.micros() + (long) (length / 2),
                    50);
            assertEquals(peak.newtons(), band.greatest(band.greatestColumn()), "in " + length + " µs");
        }
    }

    @Test
    void saysWhereSamplesAreMissing() throws IOException {
        for (long seed = 1; seed <= 2; seed++) {
            Path file = folder.resolve("g" + seed + ".tautlog");
            RandomOuting.write(file, seed, 3_000);
            OutingPyramid pyramid = follow(file, begin(file));
            List<SampleList.Sample> all = all(file, CALIBRATION);
            for (int columns : new int[] {7, 50, 5_000}) {
                Band band = show(
                        file,
                        pyramid,
                        CALIBRATION,
                        all.get(0).micros(),
                        all.get(all.size() - 1).micros() + 1,
                        columns);
                for (int i = 1; i < all.size(); i++) {
                    if (all.get(i).number() > all.get(i - 1).number() + 1) {
                        long middle = (all.get(i - 1).micros() + all.get(i).micros()) / 2;
                        assertTrue(isToldMissing(band, middle), "seed " + seed + ", " + columns + " columns");
                    }
                }
            }
        }
    }

    private static boolean isToldMissing(Band band, long at) {
        for (int i = 0; i < band.columns(); i++) {
            if (band.isMissing(i) && band.missingFrom(i) <= at && at <= band.missingTo(i)) {
                return true;
            }
        }
        return false;
    }

    @Test
    void growsWithARecordingAndIsThenWhatItWouldBeAtOnce() throws IOException {
        Path file = folder.resolve("l.tautlog");
        Random random = new Random(9);
        OutingPyramid grown = null;
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(RandomOuting.START);
            RandomOuting story = new RandomOuting(9);
            for (int i = 0; i < 12; i++) {
                story.tell(outing, 200 + random.nextInt(400));
                outing.commit();
                grown = follow(file, grown == null ? begin(file) : grown);
                List<SampleList.Sample> all = all(file, CALIBRATION);
                long first = all.get(0).micros();
                long last = all.get(all.size() - 1).micros() + 1;
                compare(all, show(file, grown, CALIBRATION, first, last, 9));
                compare(all, show(file, grown, CALIBRATION, last - 3_000_000, last, 200));
            }
        }
    }

    @Test
    void isKeptBesideTheRecordingAndNotUsedForAnother() throws IOException {
        Path file = folder.resolve("k.tautlog");
        RandomOuting.write(file, 5, 2_000);
        OutingPyramid made = follow(file, begin(file));
        Path kept = folder.resolve("kept");
        try (Recording recording = Recording.open(file)) {
            PyramidStore.write(kept, recording, Map.of(0, made));
            OutingPyramid read = PyramidStore.read(kept, recording).get(0);
            List<SampleList.Sample> all = all(file, CALIBRATION);
            long last = all.get(all.size() - 1).micros() + 1;
            compare(all, show(file, read, CALIBRATION, all.get(0).micros(), last, 11));
            compare(all, show(file, read, CALIBRATION, last - 5_000_000, last, 100));
            assertEquals(made.told(), read.told());
            Path stored = kept.resolve(recording.id() + PyramidStore.ENDING);
            byte[] bytes = Files.readAllBytes(stored);
            for (int cut : new int[] {0, 7, 40, bytes.length / 2, bytes.length - 1}) {
                Files.write(stored, java.util.Arrays.copyOf(bytes, cut));
                assertEquals(Map.of(), PyramidStore.read(kept, recording), "cut at " + cut);
            }
            bytes[bytes.length / 2] ^= 4;
            Files.write(stored, bytes);
            assertEquals(Map.of(), PyramidStore.read(kept, recording), "a bit flipped");
        }
    }

    @Test
    void aJumpOfManyNumbersCostsNoMemory() throws IOException {
        Path file = folder.resolve("j.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(RandomOuting.START);
            outing.clock(0, RandomOuting.START_MICROS);
            outing.tension(0, 0, 0, new int[] {5}, 0, 1);
            outing.tension(1L << 40, (1L << 40) * 2_000, 0, new int[] {9}, 0, 1);
            outing.end();
            outing.commit();
        }
        OutingPyramid pyramid = follow(file, begin(file));
        List<SampleList.Sample> all = all(file, CALIBRATION);
        Band band =
                show(file, pyramid, CALIBRATION, all.get(0).micros(), all.get(1).micros() + 1, 10);

        assertEquals(1, band.samples(0));
        assertEquals(1, band.samples(9));
        assertTrue(band.isMissing(5));
    }
}
