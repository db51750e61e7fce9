package tautlog.logger.footprint;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

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
        Files.writeString(folder.resolve("logger.toml"), LOGGER);
        Path link = folder.resolve("instrument");
        Process instrument =
                start("simulate", "--scenario", "afternoon", "--port-link", link.toString(), "--pace", "2");
        try {
            while (!Files.exists(link) && instrument.isAlive()) {
                TimeUnit.MILLISECONDS.sleep(50);
            }
            System.out.println(String.join(" ", daemon));
            for (int i = 1; i < STARTS; i++) {
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
        }
    }

    /** With a recordings folder of its own, so that a sample found is this run's. */
    private Process startAndAwaitFirstSample() throws IOException, InterruptedException {
        if (Files.exists(recordings)) {
            Files.move(recordings, folder.resolve("recordings-" + System.nanoTime()));
        }
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
                "samples a second  %.0f%nresident          %s now, %s at most%nprocessor         %.1f %% of a core over %.0f s%n",
                received / seconds,
                memory(logger, "VmRSS"),
                memory(logger, "VmHWM"),
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
            try (DirectoryStream<Path> files = Files.newDirectoryStream(recordings, "*.tautlog")) {
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
