package tautlog.logger.control;

import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Both ends' way of passing one line of JSON, and the place where they meet. */
final class ControlSocket {
    private static final int LONGEST_LINE = 64 * 1024;

    private ControlSocket() {}

    static Path path(Path recordings) {
        return recordings.resolve("tautlogd.sock");
    }

    static UnixDomainSocketAddress address(Path recordings) {
        return UnixDomainSocketAddress.of(path(recordings));
    }

    /** Sends one line; gives up when the other end takes nothing for {@code millis}. */
    static void send(SocketChannel channel, String line, long millis) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8));
        channel.configureBlocking(false);
        try (Selector selector = Selector.open()) {
            channel.register(selector, SelectionKey.OP_WRITE);
            while (bytes.hasRemaining()) {
                if (channel.write(bytes) == 0 && selector.select(millis) == 0) {
                    throw new IOException("the other end takes nothing");
                }
                selector.selectedKeys().clear();
            }
        }
    }

    /** The line that the other end sends within {@code millis} as an object; empty when it sends none or nonsense. */
    static Optional<JsonObject> receive(SocketChannel channel, long millis) throws IOException {
        channel.configureBlocking(false);
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        ByteBuffer some = ByteBuffer.allocate(4096);
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
        try (Selector selector = Selector.open()) {
            channel.register(selector, SelectionKey.OP_READ);
            while (line.size() < LONGEST_LINE) {
                long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                if (left <= 0 || selector.select(left) == 0) {
                    return Optional.empty();
                }
                selector.selectedKeys().clear();
                int n = channel.read(some.clear());
                line.write(some.array(), 0, Math.max(n, 0));
                if (n < 0 || endsLine(some.array(), n)) {
                    return object(line.toString(StandardCharsets.UTF_8));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean endsLine(byte[] bytes, int n) {
        return n > 0 && bytes[n - 1] == '\n';
    }

    private static Optional<JsonObject> object(String line) {
        try {
            return Optional.of(JsonParser.parseString(line).getAsJsonObject());
        } catch (JsonParseException | IllegalStateException nonsense) {
            return Optional.empty();
        }
    }
}
