package tautlog.desk.notes;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The lines of a file of notes: one JSON object a line, its key "at" the moment that it is about, "text" its text; "winch", "about", "by",
 * "written" where they are told. Other keys and blank lines are passed over.
 *
 * @param notes in the order of the file
 * @param unreadable lines that are no note, a torn one among them
 */
public record NoteLines(List<Note> notes, int unreadable) {
    public static final NoteLines NONE = new NoteLines(List.of(), 0);

    public NoteLines {
        notes = List.copyOf(notes);
    }

    public static NoteLines in(String text) {
        List<Note> notes = new ArrayList<>();
        int unreadable = 0;
        for (String line : text.lines().filter(one -> !one.isBlank()).toList()) {
            Optional<Note> note = note(line);
            note.ifPresent(notes::add);
            unreadable += note.isEmpty() ? 1 : 0;
        }
        return new NoteLines(notes, unreadable);
    }

    /** These, then others. */
    public NoteLines and(NoteLines more) {
        return new NoteLines(Stream.concat(notes.stream(), more.notes.stream()).toList(), unreadable + more.unreadable);
    }

    private static Optional<Note> note(String line) {
        try {
            JsonObject json = JsonParser.parseString(line).getAsJsonObject();
            Optional<Instant> at = text(json, "at").map(Instant::parse);
            Optional<String> text = text(json, "text");
            return at.isEmpty() || text.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Note(
                            text(json, "winch"),
                            at.get(),
                            text(json, "about").orElse(""),
                            text.get(),
                            text(json, "by"),
                            text(json, "written").map(Instant::parse)));
        } catch (JsonParseException | IllegalStateException | DateTimeException noNote) {
            return Optional.empty();
        }
    }

    private static Optional<String> text(JsonObject json, String key) {
        JsonElement value = json.get(key);
        return value != null && value.isJsonPrimitive() ? Optional.of(value.getAsString()) : Optional.empty();
    }

    /** The line of a note, without its line feed. */
    static String line(Note note) {
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        note.winch().ifPresent(winch -> json.addProperty("winch", winch));
        json.addProperty("at", note.at().toString());
        json.addProperty("about", note.about());
        json.addProperty("text", note.text());
        note.written().ifPresent(written -> json.addProperty("written", written.toString()));
        note.by().ifPresent(by -> json.addProperty("by", by));
        return json.toString();
    }
}
