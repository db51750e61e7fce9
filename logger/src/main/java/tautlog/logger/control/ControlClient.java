package tautlog.logger.control;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.SocketException;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The other commands' end of the socket. */
public final class ControlClient {
    private static final long ANSWER_MILLIS = 5_000;

    private final Path recordings;

    /** @param recordings the folder whose logger is asked */
    public ControlClient(Path recordings) {
        this.recordings = recordings;
    }

    /** What the running logger is doing; empty when none runs. */
    public Optional<JsonObject> status() throws IOException {
        JsonObject request = new JsonObject();
        request.addProperty("ask", "status");
        return ask(request);
    }

    /** What became of the mark; empty when no logger runs. */
    public Optional<MarkAnswer> mark(Optional<String> hookup, Optional<String> note) throws IOException {
        JsonObject request = new JsonObject();
        request.addProperty("ask", "mark");
        hookup.ifPresent(id -> request.addProperty("hookup", id));
        note.ifPresent(words -> request.addProperty("note", words));
        return ask(request).map(ControlClient::markAnswer);
    }

    private static MarkAnswer markAnswer(JsonObject json) {
        return new MarkAnswer(
                json.get("accepted").getAsBoolean(),
                json.has("at_number") ? Optional.of(json.get("at_number").getAsLong()) : Optional.empty(),
                json.get("words").getAsString());
    }

    private Optional<JsonObject> ask(JsonObject request) throws IOException {
        if (!Files.exists(ControlSocket.path(recordings))) {
            return Optional.empty();
        }
        try (SocketChannel channel = SocketChannel.open(ControlSocket.address(recordings))) {
            ControlSocket.send(channel, request.toString(), ANSWER_MILLIS);
            return Optional.of(ControlSocket.receive(channel, ANSWER_MILLIS)
                    .orElseThrow(() -> new IOException("the running tautlogd does not answer; try again")));
        } catch (SocketException nobody) {
            return Optional.empty(); // a socket that a killed logger left behind
        }
    }
}
