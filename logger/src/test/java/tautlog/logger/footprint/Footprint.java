package tautlog.logger.footprint;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the packaged logger costs a small board at 1,000 samples a second: resident memory and share of one core. Linux.
 *
 * <p>From the project's folder, after {@code mvn -DskipTests package}:
 *
 * <pre>
 *   java logger/src/test/java/tautlog/logger/footprint/Footprint.java
 * </pre>
 *
 * <p>The simulated instrument (500 samples a second, pace 2) and the logger are processes of their own. A JAR's manifest cannot
 * carry options of the virtual machine, so the board starts the logger by the command line that is measured here: {@code java
 * -Xmx64m -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -jar tautlogd.jar run --config logger.toml}.
 */
public final class Footprint {
    private static final List<String> OPTIONS = List.of("-Xmx64m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");
    private static final int WARM_UP_SECONDS = 10;
    private static final int MEASURED_SECONDS = 30;
    private static final Pattern SAMPLES = Pattern.compile("\"samples\": (\\d+)");

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

    private final Path jar = Path.of("logger", "target", "tautlogd.jar").toAbsolutePath();
    private final Path folder;

    private Footprint(Path folder) {
        this.folder = folder;
    }

    /** Measures once and prints; takes about a minute. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("tautlog-footprint");
        new Footprint(folder).measure();
        System.out.println("the recording is in " + folder);
    }

    private void measure() throws IOException, InterruptedException {
        Files.writeString(folder.resolve("rig.toml"), RIG);
        Files.writeString(folder.resolve("logger.toml"), LOGGER);
        Process instrument =
                start(List.of(), "simulate", "--scenario", "afternoon", "--port-link", "instrument", "--pace", "2");
        Path link = folder.resolve("instrument");
        while (!Files.exists(link) && instrument.isAlive()) {
            TimeUnit.MILLISECONDS.sleep(50);
        }
        Process logger = start(OPTIONS, "run", "--config", "logger.toml");
        try {
            TimeUnit.SECONDS.sleep(WARM_UP_SECONDS);
            report(logger);
        } finally {
            logger.destroy();
            logger.waitFor();
            instrument.destroy();
        }
    }

    private void report(Process logger) throws IOException, InterruptedException {
        long samplesBefore = samples();
        Duration cpuBefore = cpu(logger);
        long start = System.nanoTime();
        TimeUnit.SECONDS.sleep(MEASURED_SECONDS);
        double seconds = (System.nanoTime() - start) / 1e9;
        Duration cpu = cpu(logger).minus(cpuBefore);
        long received = samples() - samplesBefore;
        double sampleSeconds = (System.nanoTime() - start) / 1e9;
        System.out.printf(
                Locale.ROOT,
                "java %s%nsamples a second  %.0f%nresident          %s now, %s at most%nprocessor         %.1f %% of a core over %.0f s%n",
                String.join(" ", OPTIONS),
                received / sampleSeconds,
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

    private long samples() throws IOException, InterruptedException {
        Process status = start(List.of(), "status", "--config", "logger.toml", "--json");
        status.waitFor();
        Matcher found = SAMPLES.matcher(Files.readString(folder.resolve("status.out"), StandardCharsets.UTF_8));
        if (!found.find()) {
            throw new IOException("the logger does not record; see " + folder.resolve("run.err"));
        }
        return Long.parseLong(found.group(1));
    }

    private Process start(List<String> options, String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-jar", jar.toString()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(folder.resolve(arguments[0] + ".out").toFile())
                .redirectError(folder.resolve(arguments[0] + ".err").toFile())
                .start();
    }
}
