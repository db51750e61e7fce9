package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingCopyTest {
    private static final List<String> TABLES =
            List.of("recording", "evidence", "tail", "seconds", "begun", "finding", "sqlite_master");

    @TempDir
    Path folder;

    private Path file = Path.of("");
    private Path copy = Path.of("");

    @BeforeEach
    void name() {
        file = folder.resolve("day.tautlog");
        copy = folder.resolve("copy.tautlog");
    }

    private static OutingWriter outing(RecordingWriter writer, int seed) throws RecordingException {
        OutingWriter outing = writer.begin(Story.START);
        Story.plain(seed, 1_000).tell(outing);
        outing.commit();
        return outing;
    }

    /** Every row of every table, as text. */
    private static List<String> rows(Path file, boolean sealed) throws RecordingException, SQLException {
        List<String> all = new ArrayList<>();
        try (Connection connection = RecordingFile.openForReading(file);
                Statement statement = connection.createStatement()) {
            for (String table : TABLES) {
                if (sealed && table.equals("begun")) {
                    continue;
                }
                String columns = table.equals("sqlite_master") ? "name, sql" : "*";
                try (ResultSet rows = statement.executeQuery("SELECT " + columns + " FROM " + table)) {
                    while (rows.next()) {
                        StringBuilder row = new StringBuilder(table);
                        for (int column = 1; column <= rows.getMetaData().getColumnCount(); column++) {
                            byte[] bytes = rows.getBytes(column);
                            row.append(' ').append(bytes == null ? "null" : Chain.hex(bytes));
                        }
                        all.add(row.toString());
                    }
                }
            }
        }
        return all;
    }

    @Test
    void holdsEveryRowOfAClosedRecording() throws Exception {
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            outing(writer, 1).end();
            OutingWriter second = outing(writer, 2);
            second.end();
            second.commit();
        }

        Files.writeString(copy, "half a copy");
        Files.writeString(Path.of(copy + "-journal"), "and its journal");

        RecordingCopy.write(file, copy);

        assertFalse(Files.exists(Path.of(copy + "-journal")));
        assertEquals(rows(file, false), rows(copy, false));
        assertTrue(intact(copy));
    }

    @Test
    void isWholeByItselfWhileTheOriginalIsBeingWrittenAndHoldsNobodyUp() throws Exception {
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = outing(writer, 1);
            String link = outing.lastLink();
            List<String> before = rows(file, true);

            RecordingCopy.write(file, copy);
            outing.end();
            outing(writer, 3);

            assertFalse(Files.exists(Path.of(copy + "-wal")), "one plain file");
            assertEquals(before, rows(copy, true));
            assertTrue(intact(copy));
            try (Recording recording = Recording.open(copy)) {
                assertEquals(link, recording.lastLink());
                assertEquals(List.of(), recording.lostOutings());
            }
        }
        assertTrue(intact(file));
    }

    @Test
    void stillSaysWhatTheOriginalLacks() throws Exception {
        // given: a main file that was copied without its log
        RecordingWriter writer = RecordingWriter.open(file, "winch-1");
        outing(writer, 1);
        Path alone = folder.resolve("alone.tautlog");
        Files.copy(file, alone);
        writer.abandon();

        // when
        RecordingCopy.write(alone, copy);

        // then
        try (Recording recording = Recording.open(copy)) {
            assertEquals(1, recording.lostOutings().size());
        }
    }

    @Test
    void tellsAnUnreadableOriginalFromACopyThatCannotBeWritten() throws Exception {
        Files.writeString(file, "no recording, but long enough to look like one: ".repeat(100));
        assertThrows(RecordingException.class, () -> RecordingCopy.write(file, copy));

        Path good = folder.resolve("good.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(good, "winch-1")) {
            outing(writer, 1).end();
        }
        IOException refused = assertThrows(
                IOException.class, () -> RecordingCopy.write(good, folder.resolve("no-such-folder/copy.tautlog")));
        assertFalse(refused instanceof RecordingException, refused::toString);
    }

    @Test
    void linkNotedWhileRecordingIsStillGoneThroughLater() throws Exception {
        String sealed;
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = outing(writer, 1);
            try (Recording recording = Recording.open(file)) {
                sealed = recording.lastSealedLink().orElseThrow();
            }
            outing.end();
            outing.commit();
            OutingWriter second = outing(writer, 2);
            second.end();
            second.commit();
        }
        try (Recording recording = Recording.open(file)) {
            assertTrue(recording.goesThrough(sealed));
            assertTrue(recording.goesThrough(recording.firstLink().orElseThrow()));
            assertEquals(recording.lastLink(), recording.lastSealedLink().orElseThrow());
            assertFalse(recording.goesThrough("00".repeat(32)));
        }
    }

    private static boolean intact(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            return recording.verify().isIntact();
        }
    }
}
