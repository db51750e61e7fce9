package tautlog.logger.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;

/** {@code target/tautlogd.jar} as a process of its own, as it is started on the board. */
final class StartedDaemon {
    static final Path JAR = Path.of(System.getProperty("tautlog.root"), "logger", "target", "tautlogd.jar");

    private static final Queue<Process> STARTED = new ConcurrentLinkedQueue<>();

    private final Process process;
    private final Path stderr;

    private StartedDaemon(Process process, Path stderr) {
        this.process = process;
        this.stderr = stderr;
    }

    static StartedDaemon start(Path folder, String... arguments) throws IOException {
        return startAs(List.of(), folder, arguments);
    }

    /** @param prefix a program that starts the logger, as another user for example; may be empty */
    static StartedDaemon startAs(List<String> prefix, Path folder, String... arguments) throws IOException {
        return start(prefix, Map.of(), folder, arguments);
    }

    /** @param environment more than this program's own */
    static StartedDaemon startIn(Map<String, String> environment, Path folder, String... arguments) throws IOException {
        return start(List.of(), environment, folder, arguments);
    }

    private static StartedDaemon start(
            List<String> prefix, Map<String, String> environment, Path folder, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(prefix);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xms8m", // what a board of 512 MB begins with; a larger machine would take all at once
                "-Xmx64m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-jar",
                JAR.toString()));
        command.addAll(List.of(arguments));
        Path stderr = Files.createTempFile(folder, "stderr", ".txt");
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectError(stderr.toFile())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD);
        builder.environment().putAll(environment);
        Process process = builder.start();
        STARTED.add(process);
        return new StartedDaemon(process, stderr);
    }

    /** Ends what tests that failed left running: it would open the next test's terminal, which may get the same name. */
    static void killAll() {
        STARTED.forEach(Process::destroyForcibly);
        STARTED.clear();
    }

    long pid() {
        return process.pid();
    }

    /** Ctrl-C's sibling: asks to stop. */
    void terminate() {
        process.destroy();
    }

    /** kill -9. */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor();
    }

    int exitCode() throws InterruptedException, IOException {
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("did not end: " + stderr());
        }
        return process.exitValue();
    }

    /** What it holds of the computer's memory, by the kernel's own count. */
    long residentKilobytes() throws IOException {
        return Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status")).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                .findFirst()
                .orElse(0);
    }

    /** Its command line, as every user of the computer may read it. */
    String commandLine() throws IOException {
        return Files.readString(Path.of("/proc", String.valueOf(process.pid()), "cmdline"));
    }

    String stderr() throws IOException {
        return Files.readString(stderr);
    }
}
