package tautlog.desk.season;

import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Notes that people add to findings: {@code notes.jsonl} beside the recordings, one JSON object a line, only ever appended to. A line that a
 * power cut tore is left where it is and not shown. Safe for several threads and programs.
 */
public final class NoteBook {
    /** The longest text of one note, in characters. */
    public static final int LONGEST = 2_000;

    private static final String NAME = "notes.jsonl";
    /** Chosen: far more than a crew writes, and read in a moment. */
    private static final long LARGEST_BYTES = 16L << 20;

    private final Path file;

    public NoteBook(Path folder) {
        file = folder.resolve(NAME);
    }

    /**
     * A note.
     *
     * @param at the moment it is about
     * @param about what was found there, {@code overload}; empty for a note about a time
     * @param written when
     */
    public record Note(String winch, Instant at, String about, String text, Instant written) {}

    /** All that can be read, in the order of writing. */
    public synchronized List<Note> notes() throws IOException {
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        if (Files.size(file) > LARGEST_BYTES) {
            throw new IOException(NAME + " is larger than " + (LARGEST_BYTES >> 20) + " MB; move it away.");
        }
        List<Note> notes = new ArrayList<>();
        String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        for (String line : text.split("\n", -1)) {
            read(line, notes);
        }
        return notes;
    }

    private static void read(String line, List<Note> into) {
        try {
            JsonObject json = JsonParser.parseString(line).getAsJsonObject();
            into.add(new Note(
                    json.get("winch").getAsString(),
                    Instant.parse(json.get("at").getAsString()),
                    json.get("about").getAsString(),
                    json.get("text").getAsString(),
                    Instant.parse(json.get("written").getAsString())));
        } catch (JsonParseException | IllegalStateException | NullPointerException | java.time.DateTimeException torn) {
            return; // not a note
        }
    }

    /**
     * Appends {@code note} and has it on the disk when it returns.
     *
     * @throws IllegalArgumentException if its text is empty or longer than {@link #LONGEST}
     */
    public synchronized void add(Note note) throws IOException {
        if (note.text().isBlank() || note.text().length() > LONGEST) {
            throw new IllegalArgumentException("a note needs 1 to " + LONGEST + " characters, this has "
                    + note.text().length());
        }
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.addProperty("winch", note.winch());
        json.addProperty("at", note.at().toString());
        json.addProperty("about", note.about());
        json.addProperty("text", note.text());
        json.addProperty("written", note.written().toString());
        try (FileChannel channel = FileChannel.open(
                        file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            append(channel, json.toString(), lock);
        }
    }

    private static void append(FileChannel channel, String line, FileLock lock) throws IOException {
        long end = channel.size();
        if (!lock.isValid() || end > LARGEST_BYTES - 4L * LONGEST) {
            throw new IOException(NAME + " is full; move it away.");
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        if (end > 0 && lastByte(channel, end) != '\n') {
            bytes.write('\n'); // behind a torn line
        }
        bytes.writeBytes((line + "\n").getBytes(StandardCharsets.UTF_8));
        ByteBuffer buffer = ByteBuffer.wrap(bytes.toByteArray());
        while (buffer.hasRemaining()) {
            end += channel.write(buffer, end);
        }
        channel.force(true);
    }

    private static byte lastByte(FileChannel channel, long end) throws IOException {
        ByteBuffer one = ByteBuffer.allocate(1);
        channel.read(one, end - 1);
        return one.get(0);
    }
}
