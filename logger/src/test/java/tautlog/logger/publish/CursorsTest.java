package tautlog.logger.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.recording.SaidMark;

/** What becomes of {@code state.db} when it cannot be used. */
class CursorsTest {
    private static final SaidMark MARK = new SaidMark(7, 3);

    @TempDir
    Path folder;

    private SaidMark stored() {
        try (Cursors cursors = new Cursors(folder, "test")) {
            return cursors.at("00ff", 0);
        }
    }

    private void store(SaidMark mark) {
        try (Cursors cursors = new Cursors(folder, "test")) {
            cursors.move("00ff", 0, mark);
        }
    }

    @Test
    void leavesAloneWhatOnlyCannotBeOpenedNow() throws Exception {
        store(MARK);
        Path log = Files.createDirectory(folder.resolve("state.db-wal")); // as a full disk: no log can be made
        assertEquals(SaidMark.NONE, stored());

        Files.delete(log);

        assertEquals(MARK, stored());
        assertFalse(Files.exists(folder.resolve("state.db.damaged")));
    }

    @Test
    void putsAsideWhatIsFoundDamagedOnlyWhenItIsRead() throws Exception {
        store(MARK);
        try (FileChannel file = FileChannel.open(folder.resolve("state.db"), StandardOpenOption.WRITE)) {
            file.write(ByteBuffer.wrap("torn".repeat(2_048).getBytes()), 4_096); // behind the page of the tables' names
        }
        assertEquals(SaidMark.NONE, stored());
        assertTrue(Files.exists(folder.resolve("state.db.damaged")));

        store(new SaidMark(9, 4));

        assertEquals(new SaidMark(9, 4), stored());
    }

    @Test
    void doesNotPutAsideTheNewOneThatAnotherOutletHasMade() throws Exception {
        try (StateFile one = StateFile.open(folder, "one");
                StateFile other = StateFile.open(folder, "other")) {
            one.putAside();
            store(MARK);

            other.putAside();

            assertEquals(MARK, stored());
        }
    }
}
