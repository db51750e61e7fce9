package tautlog.desk.season;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import tautlog.calibration.CellCalibration;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingId;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/**
 * Writes a season of three winches, then times a command over it in a fresh program, twice: without and with what it remembers. How to
 * start it: {@code DEVELOPERS.md}, Benchmarks.
 *
 * <p>2,000 recordings of half an hour each, 500 samples a second: noise of ±8 counts, pulls 40 % of the time, a shaft at 540 rpm with 6
 * pulses a revolution. What is there already is not written again.
 */
public final class Season {
    static final int HERTZ = 500;
    private static final int TICKS_PER_SAMPLE = 1_000_000 / HERTZ;
    private static final int FRAME = 50;
    private static final int SLACK = 9_000;
    private static final int PULSES = 6;
    private static final double TICKS_PER_PULSE = 60e6 / 540 / PULSES;
    private static final List<String> WINCHES = List.of("upper-landing", "lower-landing", "far-side");
    private static final Instant FIRST_DAY = Instant.parse("2026-03-02T07:00:00Z");

    private final OutingWriter outing;
    private final SplittableRandom random;
    private final int[] frame = new int[FRAME];
    private final long[] pulseTicks = new long[64];
    private int filled;
    private long number;
    private long pulses;
    private double nextPulse;

    private Season(OutingWriter outing, long seed) {
        this.outing = outing;
        random = new SplittableRandom(seed);
    }

    /**
     * Writes and times.
     *
     * @param arguments the folder; how many recordings; minutes of each; the rig; then the command that is timed, its words, to which
     *     the folder is added
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        int recordings = Integer.parseInt(arguments[1]);
        double minutes = Double.parseDouble(arguments[2]);
        String rig = Files.readString(Path.of(arguments[3]));
        make(folder, recordings, minutes, SLACK, rig);
        System.out.printf(
                "%d recordings, %.0f h, %.2f GB%n", recordings, recordings * minutes / 60, bytes(folder) / 1e9);
        Path cache = Files.createTempDirectory("season-cache");
        for (String run : List.of("first", "second", "third")) {
            List<String> command = new ArrayList<>(List.of(arguments).subList(4, arguments.length));
            command.addAll(List.of(folder.toString(), "--cache", cache.toString()));
            System.out.printf("%s run: %.2f s%n", run, seconds(command));
        }
    }

    private static double seconds(List<String> command) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (InputStream out = process.getInputStream()) {
            String text = new String(out.readAllBytes(), StandardCharsets.UTF_8);
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException("ended with " + code + ": " + text);
            }
        }
        return (System.nanoTime() - start) / 1e9;
    }

    /** @param slack samples between two pulls, on the average */
    static void make(Path folder, int recordings, double minutes, int slack, String rig) {
        IntStream.range(0, recordings).parallel().forEach(i -> write(folder, i, minutes, slack, rig));
    }

    static long bytes(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.mapToLong(file -> file.toFile().length()).sum();
        }
    }

    /** Recording {@code i}: each winch works two half hours a day, six days a week. */
    private static void write(Path folder, int i, double minutes, int slack, String rig) {
        String winch = WINCHES.get(i % WINCHES.size());
        int outing = i / WINCHES.size();
        int day = outing / 2;
        Instant start = FIRST_DAY.plusSeconds((day + day / 6) * 86_400L + outing % 2 * 7_200L);
        String name = winch + "_" + start.atOffset(ZoneOffset.UTC).toLocalDate() + (outing % 2 == 0 ? "" : "_2");
        Path file = folder.resolve(name + ".tautlog");
        if (Files.exists(file)) {
            return;
        }
        try (RecordingWriter recording = RecordingWriter.open(file, winch, RecordingId.of(i))) {
            OutingWriter writer = recording.begin(new OutingStart(
                    new Instrument("TL-" + i % 3, 1, 0, 1_000 + i, 1_000_000, HERTZ * 1_000L, 8_388_607, PULSES),
                    rig,
                    CellCalibration.written(Calibration.of("0", "0.5")),
                    "tautlogd season",
                    OutingStart.Source.INSTRUMENT));
            writer.clock(0, start.getEpochSecond() * 1_000_000);
            writer.hookup(0, "straight", HookupSource.MARK);
            new Season(writer, i).work(Math.round(minutes * 60 * HERTZ), slack);
            writer.end();
            writer.commit();
        } catch (RecordingException e) {
            throw new IllegalStateException(e);
        }
    }

    private void work(long samples, int slack) throws RecordingException {
        while (number < samples) {
            piece(slack * 4 / 9 + random.nextInt(slack * 10 / 9), 0, 0);
            int level = 6_000 + random.nextInt(14_000);
            piece(random.nextInt(6) == 0 ? 4 : 400, 0, level);
            int drags = 5 + random.nextInt(20);
            int from = level;
            for (int i = 0; i < drags; i++) {
                int to = level + random.nextInt(3_000) - 1_500;
                piece(300 + random.nextInt(400), from, to);
                from = to;
            }
            piece(150, from, 0);
            outing.commit();
        }
    }

    private void piece(int length, int from, int to) {
        for (int i = 0; i < length; i++) {
            frame[filled++] = from + (int) ((long) (to - from) * i / length) + random.nextInt(17) - 8;
            if (filled == FRAME) {
                flush();
            }
        }
    }

    private void flush() {
        outing.tension(number, number * TICKS_PER_SAMPLE, 0, frame, 0, FRAME);
        number += FRAME;
        filled = 0;
        long now = number * TICKS_PER_SAMPLE - 1;
        int n = 0;
        while (nextPulse <= now) {
            pulseTicks[n++] = (long) nextPulse;
            nextPulse += TICKS_PER_PULSE;
        }
        pulses += n;
        outing.shaft(now, pulses, pulseTicks, n);
    }
}
