package tautlog.logger.installed;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** A Debian whose systemd runs, in namespaces of its own, as on a board that was switched on. */
final class BootedBoard implements AutoCloseable {
    private static final Path BOOT =
            Path.of(System.getProperty("tautlog.root"), "logger", "src", "test", "resources", "installed", "boot.sh");
    private static final long LONGEST_SECONDS = 60;

    private final Process outer;
    private final Path root;
    private final String first;

    private BootedBoard(Process outer, Path root, String first) {
        this.outer = outer;
        this.root = root;
        this.first = first;
    }

    static BootedBoard switchOn(Path root) throws IOException, InterruptedException {
        Path said = root.resolve("boot.log");
        Process outer = new ProcessBuilder(
                        "unshare",
                        "-m",
                        "-p",
                        "-f",
                        "-i",
                        "-u",
                        "-C",
                        "--kill-child",
                        "sh",
                        BOOT.toString(),
                        root.toString())
                .redirectErrorStream(true)
                .redirectOutput(Redirect.to(said.toFile()))
                .start();
        outer.getOutputStream().close();
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
        while (outer.isAlive() && System.nanoTime() < until) {
            List<ProcessHandle> children = outer.children().toList();
            if (!children.isEmpty()) {
                BootedBoard board = new BootedBoard(
                        outer, root, String.valueOf(children.get(0).pid()));
                if (board.run("systemctl is-system-running").said().matches("(?s)running.*|degraded.*")) {
                    return board;
                }
            }
            TimeUnit.MILLISECONDS.sleep(100);
        }
        outer.destroyForcibly();
        throw new AssertionError("systemd did not start: " + Files.readString(said));
    }

    Path file(String path) {
        return root.resolve(path);
    }

    /** Runs a shell command on the board. */
    Ran run(String command) throws IOException {
        return Ran.command("nsenter", "-t", first, "-m", "-p", "-i", "-u", "-C", "-r", "-w", "sh", "-c", command);
    }

    /** Waits until {@code command} says what is wanted. */
    String await(String command, Predicate<String> wanted) throws IOException, InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
        String said = run(command).said();
        while (!wanted.test(said)) {
            if (System.nanoTime() > until) {
                throw new AssertionError(command + ": " + said + "\n"
                        + run("systemctl status tautlogd; journalctl -u tautlogd --no-pager | tail -20")
                                .said());
            }
            TimeUnit.MILLISECONDS.sleep(100);
            said = run(command).said();
        }
        return said;
    }

    /** The power goes. */
    @Override
    public void close() throws IOException {
        outer.destroyForcibly();
        outer.onExit().join();
    }
}
