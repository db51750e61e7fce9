package tautlog.desk.notes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NoteBookTest {
    private static final Instant AT = Instant.parse("2026-05-04T07:00:15.000001Z");

    @TempDir
    Path folder;

    private static Note note(String text) {
        return Note.of("upper-landing", AT, "shock", text, Instant.parse("2026-05-04T20:00:00Z"));
    }

    @Test
    void keepsNotesInTheOrderOfWriting() throws IOException {
        NoteBook book = new NoteBook(folder);
        book.add(note("a stump"));
        book.add(note("two\nlines, \"quoted\", \u0000"));

        assertEquals(
                List.of(note("a stump"), note("two\nlines, \"quoted\", \u0000")),
                new NoteBook(folder).lines().notes());
    }

    /** A power cut may tear the last line at any byte: it is lost alone, and what is added behind it is not. */
    @Test
    void survivesALineTornAtAnyByte() throws IOException {
        NoteBook book = new NoteBook(folder);
        book.add(note("first"));
        Path file = folder.resolve("notes.jsonl");
        byte[] one = Files.readAllBytes(file);
        book.add(note("second"));
        byte[] two = Files.readAllBytes(file);
        for (int cut = one.length; cut < two.length - 2; cut++) {
            Files.write(file, java.util.Arrays.copyOf(two, cut));
            assertEquals(List.of(note("first")), book.lines().notes(), "cut at " + cut);
            book.add(note("third"));
            assertEquals(List.of(note("first"), note("third")), book.lines().notes(), "cut at " + cut);
        }
    }

    @Test
    void readsANoteThatWasWrittenByHand() throws IOException {
        Files.writeString(
                folder.resolve("notes.jsonl"),
                "{\"at\":\"2026-05-04T07:00:15.000001Z\",\"text\":\"a stump\",\"by\":\"A. Reed\"}\n\nnone\n");

        NoteLines read = new NoteBook(folder).lines();

        Note byHand = new Note(Optional.empty(), AT, "", "a stump", Optional.of("A. Reed"), Optional.empty());
        assertEquals(List.of(byHand), read.notes());
        assertEquals(byHand, NoteLines.in(NoteLines.line(byHand)).notes().get(0));
        assertEquals(1, read.unreadable());
    }

    @Test
    void refusesWhatIsEmptyOrTooLong() {
        NoteBook book = new NoteBook(folder);
        assertThrows(IllegalArgumentException.class, () -> book.add(note("  ")));
        assertThrows(IllegalArgumentException.class, () -> book.add(note("x".repeat(NoteBook.LONGEST + 1))));
    }
}
