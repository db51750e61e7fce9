package tautlog.desk.incident;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Notes that people kept beside the recordings, as the evening view writes them: one JSON object a line, its key "at" the moment that it is
 * about, "text" its text. "by" is told where somebody wrote it by hand; other keys are passed over.
 *
 * @param isRead whether there was a file of them
 * @param notes in the order of the file
 * @param unreadable lines that are no note, a torn last one among them
 */
public record SavedNotes(boolean isRead, List<Note> notes, int unreadable) {
    /** There is no file of notes. */
    public static final SavedNotes NONE = new SavedNotes(false, List.of(), 0);

    public SavedNotes {
        notes = List.copyOf(notes);
    }

    /** A note; {@code by} is empty when nobody is named. */
    public record Note(Instant at, String text, String by) {}

    /** Reads the lines of a file of notes. */
    public static SavedNotes of(List<String> lines) {
        List<Note> notes = new ArrayList<>();
        int unreadable = 0;
        for (String line : lines) {
            Optional<Note> note = line.isBlank() ? Optional.empty() : note(line);
            note.ifPresent(notes::add);
            unreadable += note.isEmpty() && !line.isBlank() ? 1 : 0;
        }
        return new SavedNotes(true, notes, unreadable);
    }

    private static Optional<Note> note(String line) {
        try {
            JsonObject object = JsonParser.parseString(line).getAsJsonObject();
            Optional<String> at = text(object, "at");
            Optional<String> note = text(object, "text");
            return at.isEmpty() || note.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Note(
                            Instant.parse(at.get()),
                            note.get(),
                            text(object, "by").orElse("")));
        } catch (JsonParseException | IllegalStateException | DateTimeException noNote) {
            return Optional.empty();
        }
    }

    private static Optional<String> text(JsonObject object, String key) {
        JsonElement value = object.get(key);
        return value != null && value.isJsonPrimitive() ? Optional.of(value.getAsString()) : Optional.empty();
    }

    SavedNotes in(Window window) {
        return new SavedNotes(
                isRead,
                notes.stream()
                        .filter(note ->
                                !note.at().isBefore(window.from()) && !note.at().isAfter(window.to()))
                        .toList(),
                unreadable);
    }
}
