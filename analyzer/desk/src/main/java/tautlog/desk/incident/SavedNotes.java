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
 * @param unplaced notes of which nobody can say whether they belong here, because the moment has no time
 */
public record SavedNotes(boolean isRead, List<Note> notes, int unreadable, int unplaced) {
    /** There is no file of notes. */
    public static final SavedNotes NONE = new SavedNotes(false, List.of(), 0, 0);

    public SavedNotes {
        notes = List.copyOf(notes);
    }

    /** Of a file of notes, or of several. */
    public static SavedNotes of(NoteLines lines) {
        return new SavedNotes(true, lines.notes(), lines.unreadable(), 0);
    }

    SavedNotes in(Window window) {
        return new SavedNotes(
                isRead,
                notes.stream().filter(note -> window.holds(note.at())).toList(),
                unreadable,
                window.at().isPresent() ? 0 : notes.size());
    }
}
