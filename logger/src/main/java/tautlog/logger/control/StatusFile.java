package tautlog.logger.control;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/** What the logger leaves in {@code status.json} of the recordings folder, for when it does not run. */
public final class StatusFile {
    private static final Gson PRETTY =
            new GsonBuilder().setPrettyPrinting().serializeNulls().create();

    private final Path file;

    /** @param recordings the recordings folder */
    public StatusFile(Path recordings) {
        file = recordings.resolve("status.json");
    }

    /** Puts {@code status} in the place of what was there, whole or not at all, also when power is cut meanwhile. */
    public void write(Status status) throws IOException {
        Path draft = file.resolveSibling("status.json.new");
        ByteBuffer json = StandardCharsets.UTF_8.encode(PRETTY.toJson(StatusJson.of(status)) + "\n");
        try (FileChannel channel = FileChannel.open(
                draft, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            while (json.hasRemaining()) {
                channel.write(json);
            }
            channel.force(true);
        }
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    /** What the last logger left, no longer running; empty when none ever wrote here. */
    public Optional<JsonObject> read() throws IOException {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            JsonObject json = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
            json.addProperty("running", false);
            return Optional.of(json);
        } catch (JsonParseException | IllegalStateException damaged) {
            throw new IOException(file + " is damaged; the next start of tautlogd writes it anew", damaged);
        }
    }
}
