package tautlog.logger.footprint;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingName;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * What the logger costs a small board at 1,000 samples a second: time from its start to the first sample stored, resident memory,
 * share of one core. Linux.
 *
 * <p>From the project's folder, after {@code mvn -DskipTests package}, the plain jar; then the installed package, with its
 * archive of classes:
 *
 * <pre>
 *   java -cp 'logger/target/lib/*' logger/src/test/java/tautlog/logger/footprint/Footprint.java
 *   java -cp 'logger/target/lib/*' logger/src/test/java/tautlog/logger/footprint/Footprint.java /usr/bin/tautlogd
 * </pre>
 *
 * <p>{@code -Dpublish=true} in front has it publish to a mosquitto and a victoria-metrics, which must be installed; {@code
 * -Drecordings=100} puts so many recordings of earlier days, ten minutes each, into its folder, none of them published yet.
 *
 * <p>The words are the command that starts the logger. The simulated instrument (500 samples a second, pace 2) and the logger are
 * processes of their own. "Stored" is judged from outside: another program opens the recording and finds samples in it.
 */
public final class Footprint {
    private static final int WARM_UP_SECONDS = 10;
    private static final int MEASURED_SECONDS = 30;
    private static final int STARTS = 5;
    private static final int LOOK_MILLIS = 5;

    private static final String RIG = """
            schema = 1
            [winch]
            name = "footprint"
            rated_pull = "40 kN"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "20 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "choker" } ]
            """;

    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            port = "./instrument"
            [calibration]
            zero_counts = 4000.0
            newtons_per_count = 0.5
            """;

    private static final String PUBLISH = """
            [publish.mqtt]
            url = "tcp://127.0.0.1:18830"
            [publish.influx]
            url = "http://127.0.0.1:18860"
            org = "outfit"
            bucket = "winches"
            """;

    private static final boolean PUBLISHES = Boolean.getBoolean("publish");
    private static final int OLD_RECORDINGS = Integer.getInteger("recordings", 0);

    private final List<String> daemon;
    private final Path folder;
    private final Path recordings;

    private Footprint(List<String> daemon, Path folder) {
        this.daemon = daemon;
        this.folder = folder;
        recordings = folder.resolve("recordings");
    }

    /** Measures and prints; takes about a minute. */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<String> daemon = args.length > 0
                ? List.of(args)
                : List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        Path.of("logger", "target", "tautlogd.jar")
                                .toAbsolutePath()
                                .toString());
        Path folder = Files.createTempDirectory("tautlog-footprint");
        new Footprint(daemon, folder).measure();
        System.out.println("the recordings are in " + folder);
    }

    private void measure() throws IOException, InterruptedException {
        Files.writeString(folder.resolve("rig.toml"), RIG);
        Files.writeString(folder.resolve("logger.toml"), PUBLISHES ? LOGGER + PUBLISH : LOGGER);
        List<Process> servers = PUBLISHES ? servers() : List.of();
        Path link = folder.resolve("instrument");
        Process instrument =
                start("simulate", "--scenario", "afternoon", "--port-link", link.toString(), "--pace", "2");
        try {
            while (!Files.exists(link) && instrument.isAlive()) {
                TimeUnit.MILLISECONDS.sleep(50);
            }
            System.out.println(String.join(" ", daemon));
            for (int i = 1; i < STARTS && OLD_RECORDINGS == 0; i++) {
                stop(startAndAwaitFirstSample());
            }
            Process logger = startAndAwaitFirstSample();
            try {
                TimeUnit.SECONDS.sleep(WARM_UP_SECONDS);
                report(logger);
            } finally {
                stop(logger);
            }
        } finally {
            instrument.destroy();
            servers.forEach(Process::destroy);
        }
    }

    private List<Process> servers() throws IOException, InterruptedException {
        Path config = folder.resolve("mosquitto.conf");
        Files.writeString(config, "listener 18830 127.0.0.1\nallow_anonymous true\n");
        List<Process> servers = List.of(
                new ProcessBuilder("mosquitto", "-c", config.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("mosquitto.log").toFile())
                        .start(),
                new ProcessBuilder(
                                "victoria-metrics",
                                "-httpListenAddr=127.0.0.1:18860",
                                "-retentionPeriod=100y",
                                "-storageDataPath=" + folder.resolve("series"))
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("series.log").toFile())
                        .start());
        TimeUnit.SECONDS.sleep(3);
        return servers;
    }

    /** Of one day each, before this one. */
    private void fill() throws IOException {
        Instrument instrument = new Instrument("TL-0001", 1, 0, 1, 1_000_000, 1_000_000, 8_388_607, 6);
        for (int day = 1; day <= OLD_RECORDINGS; day++) {
            Instant began = Instant.parse("2025-06-01T07:00:00Z").plus(Duration.ofDays(day));
            try (RecordingWriter writer =
                    RecordingWriter.open(RecordingName.dated(recordings, "footprint", began), "footprint")) {
                OutingWriter outing = writer.begin(new OutingStart(
                        instrument,
                        RIG,
                        CellCalibration.written(Calibration.of("4000", "0.5")),
                        "footprint",
                        OutingStart.Source.INSTRUMENT));
                outing.clock(0, began.toEpochMilli() * 1_000);
                tenMinutes(outing);
                outing.end();
                outing.commit();
            }
        }
    }

    private static void tenMinutes(OutingWriter outing) throws RecordingException {
        int[] counts = new int[1_000];
        for (int second = 0; second < 600; second++) {
            for (int i = 0; i < counts.length; i++) {
                counts[i] = 4_000 + (i * 7_919 + second) % 17;
            }
            long first = second * 1_000L;
            outing.tension(first, first * 1_000, 0, counts, 0, counts.length);
            outing.second(new Second(
                    second, first, 4_000, 4_016, 4_008_000, 1_000, OptionalDouble.empty(), "straight", 0.0, 0));
            if (second % 60 == 30) {
                outing.finding(new Finding.Jolt(first, 4_000, first + 5, 4_016, "straight", false));
                outing.commit();
            }
        }
    }

    /** With a recordings folder of its own, so that a sample found is this run's. */
    private Process startAndAwaitFirstSample() throws IOException, InterruptedException {
        if (Files.exists(recordings)) {
            Files.move(recordings, folder.resolve("recordings-" + System.nanoTime()));
        }
        Files.createDirectories(recordings);
        fill();
        long start = System.nanoTime();
        Process logger = start("run", "--config", folder.resolve("logger.toml").toString());
        while (samples() == 0) {
            if (!logger.isAlive()) {
                throw new IOException("the logger does not record; see " + folder.resolve("run.err"));
            }
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        System.out.printf(
                Locale.ROOT,
                "first sample      %.2f s after the start, %.2f s of processor time%n",
                (System.nanoTime() - start) / 1e9,
                cpu(logger).toMillis() / 1e3);
        return logger;
    }

    private static void stop(Process logger) throws InterruptedException {
        logger.destroy();
        logger.waitFor();
    }

    private void report(Process logger) throws IOException, InterruptedException {
        long samplesBefore = samples();
        Duration cpuBefore = cpu(logger);
        long start = System.nanoTime();
        TimeUnit.SECONDS.sleep(MEASURED_SECONDS);
        double seconds = (System.nanoTime() - start) / 1e9;
        Duration cpu = cpu(logger).minus(cpuBefore);
        long received = samples() - samplesBefore;
        System.out.printf(
                Locale.ROOT,
                "samples a second  %.0f%nresident          %s now, %s at most; %s of it its own (the rest: files, which the system may drop)%nprocessor         %.1f %% of a core over %.0f s%n",
                received / seconds,
                memory(logger, "VmRSS"),
                memory(logger, "VmHWM"),
                memory(logger, "RssAnon"),
                100 * cpu.toNanos() / 1e9 / seconds,
                seconds);
    }

    private static Duration cpu(Process process) {
        return process.info().totalCpuDuration().orElseThrow();
    }

    private static String memory(Process process, String key) throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status"))) {
            if (line.startsWith(key + ":")) {
                long kilobytes = Long.parseLong(line.replaceAll("\\D", ""));
                return String.format(Locale.ROOT, "%.1f MB", kilobytes / 1024.0);
            }
        }
        return "unknown";
    }

    /** Samples that another program finds in the recordings now. */
    private long samples() throws IOException {
        long samples = 0;
        if (Files.isDirectory(recordings)) {
            try (DirectoryStream<Path> files =
                    Files.newDirectoryStream(recordings, "*_" + LocalDate.now(ZoneOffset.UTC) + "*.tautlog")) {
                for (Path file : files) {
                    samples += samples(file);
                }
            }
        }
        return samples;
    }

    private static long samples(Path file) {
        try (Recording recording = Recording.open(file)) {
            return recording.outings().stream().mapToLong(Outing::samples).sum();
        } catch (RecordingException notYet) {
            return 0;
        }
    }

    private Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(daemon);
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectOutput(folder.resolve(arguments[0] + ".out").toFile())
                .redirectError(folder.resolve(arguments[0] + ".err").toFile())
                .start();
    }
}
