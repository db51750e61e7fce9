package tautlog.desk.incident;

import java.util.List;
import tautlog.desk.notes.Note;
import tautlog.desk.notes.NoteLines;

/**
 * Notes that people kept beside the recordings.
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

    /** Of a file of notes, or of several. */
    public static SavedNotes of(NoteLines lines) {
        return new SavedNotes(true, lines.notes(), lines.unreadable());
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
