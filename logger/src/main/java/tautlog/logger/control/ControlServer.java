package tautlog.logger.control;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running logger's end of the socket; one client after the other, on the control thread. */
public final class ControlServer implements Runnable, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ControlServer.class);
    private static final Gson LINE = new GsonBuilder().serializeNulls().create();
    private static final long CLIENT_MILLIS = 2_000;

    private final Path socket;
    private final ServerSocketChannel server;
    private final Controlled controlled;

    private ControlServer(Path socket, ServerSocketChannel server, Controlled controlled) {
        this.socket = socket;
        this.server = server;
        this.controlled = controlled;
    }

    /**
     * Listens at the recordings folder's {@link ControlSocket#path}; a socket that a dead logger left there is replaced, so the caller must be the only
     * logger of that folder.
     */
    public static ControlServer open(Path recordings, Controlled controlled) throws IOException {
        Path socket = ControlSocket.path(recordings);
        Files.deleteIfExists(socket);
        ServerSocketChannel server = ServerSocketChannel.open(StandardProtocolFamily.UNIX);
        try {
            server.bind(ControlSocket.address(recordings));
        } catch (IOException e) {
            server.close();
            throw e;
        }
        return new ControlServer(socket, server, controlled);
    }

    /** Answers until closed or interrupted. */
    @Override
    public void run() {
        while (server.isOpen() && !Thread.currentThread().isInterrupted()) {
            try (SocketChannel client = server.accept()) {
                answer(client);
            } catch (ClosedChannelException closed) {
                return;
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            } catch (IOException gone) {
                LOG.debug("a client of the control socket went away: {}", gone.getMessage());
            } catch (RuntimeException | Error bug) { // one answer less; neither the next nor the recording must notice
                LOG.error("bug while a client of the control socket was answered", bug);
            }
        }
    }

    private void answer(SocketChannel client) throws IOException, InterruptedException {
        Optional<JsonObject> request = ControlSocket.receive(client, CLIENT_MILLIS);
        if (request.isPresent()) {
            ControlSocket.send(client, LINE.toJson(answer(request.get())), CLIENT_MILLIS);
        }
    }

    private JsonObject answer(JsonObject request) throws InterruptedException {
        return switch (text(request, "ask").orElse("")) {
            case "status" -> StatusJson.of(controlled.status());
            case "mark" -> mark(controlled.mark(text(request, "hookup"), text(request, "note")));
            default -> mark(new MarkAnswer(false, Optional.empty(), "this tautlogd knows only status and mark"));
        };
    }

    private static JsonObject mark(MarkAnswer answer) {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("accepted", answer.accepted());
        answer.atNumber().ifPresent(number -> json.addProperty("at_number", number));
        json.addProperty("words", answer.words());
        return json;
    }

    private static Optional<String> text(JsonObject json, String key) {
        JsonElement value = json.get(key);
        return value != null && value.isJsonPrimitive() ? Optional.of(value.getAsString()) : Optional.empty();
    }

    @Override
    public void close() throws IOException {
        server.close();
        Files.deleteIfExists(socket);
    }
}
