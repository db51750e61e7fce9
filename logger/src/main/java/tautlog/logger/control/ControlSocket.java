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
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.zip.CRC32C;

/** Both ends' way of passing one line of JSON, and the place where they meet. */
final class ControlSocket {
    private static final int LONGEST_LINE = 64 * 1024;

    private ControlSocket() {}

    /**
     * Outside the recordings folder, which then can be copied whole: a socket cannot be copied. In the system's temporary
     * folder, under a name that both ends work out from where the recordings are; so short that any folder will do (a
     * socket's path holds about 100 bytes).
     */
    static Path path(Path recordings) throws IOException {
        Path folder = Files.exists(recordings)
                ? recordings.toRealPath()
                : recordings.toAbsolutePath().normalize();
        CRC32C crc = new CRC32C();
        byte[] name = folder.toString().getBytes(StandardCharsets.UTF_8);
        crc.update(name, 0, name.length);
        return Path.of(System.getProperty("java.io.tmpdir", "/tmp"))
                .resolve(String.format(Locale.ROOT, "tautlogd-%08x.sock", crc.getValue()));
    }

    static UnixDomainSocketAddress address(Path recordings) throws IOException {
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
