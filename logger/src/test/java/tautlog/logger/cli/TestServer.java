package tautlog.logger.cli;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** A real server as a process, that can be killed, paused and started again. */
final class TestServer implements AutoCloseable {
    private final List<String> command;
    private final int port;
    private final Path log;
    private @Nullable Process process;

    TestServer(Path log, int port, List<String> command) {
        this.log = log;
        this.port = port;
        this.command = command;
    }

    /** Skips the test when the program is not installed. */
    static void require(String program) {
        if (List.of("/usr/bin", "/usr/sbin", "/bin").stream()
                .noneMatch(folder -> Files.isExecutable(Path.of(folder, program)))) {
            Mandatory.skip("this test talks to a real " + program + ", which is not installed");
        }
    }

    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** Returns when it accepts connections. */
    TestServer start() throws IOException, InterruptedException {
        process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!accepts()) {
            if (System.nanoTime() > end || !process.isAlive()) {
                throw new AssertionError(command + " does not start: " + Files.readString(log));
            }
            Thread.sleep(20);
        }
        return this;
    }

    private boolean accepts() {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress("127.0.0.1", port), 500);
            return true;
        } catch (IOException notYet) {
            return false;
        }
    }

    boolean isAlive() {
        Process running = process;
        return running != null && running.isAlive();
    }

    void kill() throws InterruptedException {
        Process running = process;
        if (running != null) {
            running.destroyForcibly();
            running.waitFor();
        }
    }

    void pause() throws IOException, InterruptedException {
        signal("STOP");
    }

    void goOn() throws IOException, InterruptedException {
        signal("CONT");
    }

    private void signal(String name) throws IOException, InterruptedException {
        Process running = process;
        if (running != null) {
            new ProcessBuilder("kill", "-" + name, String.valueOf(running.pid()))
                    .start()
                    .waitFor();
        }
    }

    @Override
    public void close() {
        Process running = process;
        if (running != null) {
            running.destroyForcibly().onExit().join();
        }
    }
}
