package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tautlog.logger.pty.PseudoTerminal;

/** The packaged programs, started from outside in a folder of their own below {@code logger/target/endtoend}. */
public final class BothPrograms {
    private static final Path ROOT = Path.of(System.getProperty("tautlog.root"));
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final Path folder;

    /** The line while the logger records. */
    interface Line {
        /** Sends {@code bytes} and waits until the logger has read them. */
        void send(byte[] bytes) throws Exception;

        /** Sends {@code bytes} without waiting. */
        void pass(byte[] bytes) throws Exception;
    }

    /** What stands at the other end of the line. */
    interface Peer {
        /** Talks until it has said all. */
        void at(PseudoTerminal terminal) throws Exception;
    }

    /** What goes over the line. */
    interface Sending {
        void over(Line line) throws Exception;
    }

    private BothPrograms(Path folder) {
        this.folder = folder;
    }

    /** @param name of the folder; what an earlier run left there is deleted */
    static BothPrograms in(Path name, String rig) throws IOException {
        return in(name, rig, LOGGER);
    }

    /** With another {@code logger.toml}, whose port is {@code ./port}. */
    public static BothPrograms in(Path name, String rig, String logger) throws IOException {
        Path folder = ROOT.resolve("logger/target/endtoend").resolve(name);
        if (Files.exists(folder)) {
            try (Stream<Path> left = Files.walk(folder)) {
                for (Path path : left.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("rig.toml"), rig);
        Files.writeString(folder.resolve("logger.toml"), logger);
        return new BothPrograms(folder);
    }

    /** Runs {@code tautlogd run --until-closed} over what {@code sending} brings, then hangs up. */
    void record(Sending sending) throws Exception {
        recordAgainst(terminal -> {
            sending.over(new Line() {
                @Override
                public void send(byte[] bytes) throws Exception {
                    pass(bytes);
                    assertTrue(terminal.waitUntilTaken(PATIENCE), () -> errors("run"));
                }

                @Override
                public void pass(byte[] bytes) throws Exception {
                    assertTrue(terminal.write(bytes, 0, bytes.length), () -> errors("run"));
                }
            });
            assertTrue(terminal.waitUntilTaken(PATIENCE), () -> errors("run"));
        });
    }

    /** Runs {@code tautlogd run --until-closed} while {@code peer} talks, then hangs up. */
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    void recordAgainst(Peer peer) throws Exception {
        Process logger;
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            terminal.linkAt(folder.resolve("port"));
            logger = start("logger/target/tautlogd.jar", "run", "--config", "logger.toml", "--until-closed");
            assertTrue(terminal.waitForReader(PATIENCE), () -> errors("run"));
            peer.at(terminal);
        }
        assertTrue(logger.waitFor(30, TimeUnit.SECONDS), "tautlogd ends when the port is closed");
        assertEquals(0, logger.exitValue(), () -> errors("run"));
    }

    /** A name in the programs' folder. */
    Path path(String name) {
        return folder.resolve(name);
    }

    /** Where all its files are. */
    public Path folder() {
        return folder;
    }

    /** What a command said beside its result. */
    String said(String command) {
        return errors(command);
    }

    /** What {@code tautlogd} prints, ended with exit code 0. */
    String logger(String... arguments) throws IOException, InterruptedException {
        return run("logger/target/tautlogd.jar", arguments);
    }

    /** What {@code tautlog} prints, ended with exit code 0. */
    String desk(String... arguments) throws IOException, InterruptedException {
        return run("analyzer/desk/target/tautlog.jar", arguments);
    }

    public JsonObject report() throws IOException, InterruptedException {
        return JsonParser.parseString(desk("report", "recordings", "--json")).getAsJsonObject();
    }

    private String run(String jar, String... arguments) throws IOException, InterruptedException {
        Process process = start(jar, arguments);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), () -> errors(arguments[0]));
        return Files.readString(folder.resolve(arguments[0] + ".out"));
    }

    private Process start(String jar, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                ROOT.resolve(jar).toString()));
        command.addAll(Arrays.asList(arguments));
        return new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(folder.resolve(arguments[0] + ".out").toFile())
                .redirectError(folder.resolve(arguments[0] + ".err").toFile())
                .start();
    }

    private String errors(String command) {
        try {
            return Files.readString(folder.resolve(command + ".err"));
        } catch (IOException e) {
            return "no errors to show: " + e;
        }
    }

    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "framed"
            port = "./port"
            baud = 115200
            clock = "device"
            start_utc = 2026-05-04T07:00:00Z
            [calibration]
            zero_counts = 0.0
            newtons_per_count = 0.01
            zero = "fixed"
            """;
}
