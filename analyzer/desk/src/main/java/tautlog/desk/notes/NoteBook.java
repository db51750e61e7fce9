package tautlog.desk.notes;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import tautlog.desk.disk.LineFile;

/**
 * Notes that people add to findings: {@code notes.jsonl} beside the recordings, only ever appended to. A line that a power cut tore is left
 * where it is and not shown. Safe for several threads and programs.
 */
public final class NoteBook {
    /** As it lies in the folder of recordings. */
    public static final String NAME = "notes.jsonl";
    /** The longest text of one note, in characters. */
    public static final int LONGEST = 2_000;

    /** Chosen: far more than a crew writes, and read in a moment. */
    private static final long LARGEST_BYTES = 16L << 20;

    private final LineFile file;

    public NoteBook(Path folder) {
        file = new LineFile(folder.resolve(NAME), LARGEST_BYTES);
    }

    public boolean exists() {
        return file.exists();
    }

    /** All of them, in the order of writing; none without a file. */
    public synchronized NoteLines lines() throws IOException {
        return exists() ? NoteLines.in(new String(file.bytes(), StandardCharsets.UTF_8)) : NoteLines.NONE;
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
        file.append(NoteLines.line(note));
    }
}
