package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Locks are held and asked for by another program: within one, a file's locks do not show. */
class ClosedFileTest {
    @TempDir
    Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void record() throws IOException {
        file = folder.resolve("r.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 40).tell(outing);
            outing.end();
            outing.commit();
        }
    }

    @Test
    void givesAllBytesOfAClosedFile() throws IOException {
        assertArrayEquals(Files.readAllBytes(file), ClosedFile.read(file).orElseThrow());
    }

    @Test
    void keepsWritersOfOtherProgramsOutWhileItReads() throws IOException {
        try (OtherProgram other = new OtherProgram(file)) {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
                assertTrue(ClosedFile.isLocked(channel));
                assertEquals(OtherProgram.BUSY, other.does("UPDATE recording SET winch = 'x'"));
                assertEquals(OtherProgram.BUSY, other.does("PRAGMA journal_mode = WAL"));
            }
            assertEquals("done", other.does("UPDATE recording SET winch = 'x'"));
        }
    }

    @Test
    void givesNothingWhileAnotherProgramWrites() throws IOException {
        try (OtherProgram other = new OtherProgram(file)) {
            assertEquals("done", other.does("BEGIN EXCLUSIVE"));
            assertTrue(ClosedFile.read(file).isEmpty());
            assertEquals("done", other.does("ROLLBACK"));
            assertTrue(ClosedFile.read(file).isPresent());
        }
    }

    @Test
    void givesNothingWhileAnotherProgramIsAboutToWrite() throws IOException {
        try (OtherProgram other = new OtherProgram(file);
                OtherProgram reader = new OtherProgram(file)) {
            assertEquals("done", reader.does("BEGIN"));
            assertEquals("done", reader.does("SELECT * FROM recording"));
            assertEquals("done", other.does("BEGIN"));
            assertEquals("done", other.does("UPDATE recording SET winch = 'x'"));
            assertEquals(OtherProgram.BUSY, other.does("COMMIT"), "it has its journal and waits for the reader");
            assertTrue(Files.exists(Path.of(file + "-journal")));
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
                assertFalse(ClosedFile.isLocked(channel), "no new reader passes who waits");
            }
            assertTrue(ClosedFile.read(file).isEmpty());
        }
    }

    @Test
    void givesNothingWhenALogOrAJournalLiesBesideIt() throws IOException {
        for (String ending : List.of("-wal", "-journal")) {
            Path beside = Files.createFile(Path.of(file + ending));
            assertTrue(ClosedFile.read(file).isEmpty(), ending);
            Files.delete(beside);
        }
        assertTrue(ClosedFile.read(file).isPresent());
    }

    @Test
    void givesNothingOfALinkToAFileThatWasLeftInTheMiddleOfAChange() throws Exception {
        Path crashed = Files.createDirectory(folder.resolve("crashed")).resolve("r.tautlog");
        copyInTheMiddleOfAChange(file, crashed);
        assertTrue(Files.mismatch(file, crashed) >= 0, "else this shows nothing");
        Path link = Files.createSymbolicLink(folder.resolve("link.tautlog"), crashed);

        assertTrue(ClosedFile.read(link).isEmpty());

        Files.delete(Path.of(crashed + "-journal"));
        assertTrue(ClosedFile.read(link).isPresent());
    }

    /** As a program leaves it that was killed while it changed the file, with its journal. */
    static void copyInTheMiddleOfAChange(Path file, Path copy) throws SQLException, IOException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA cache_size = 1");
            statement.execute("PRAGMA cache_spill = 1");
            statement.execute("BEGIN IMMEDIATE");
            statement.execute("UPDATE evidence SET block = zeroblob(length(block))");
            Files.copy(file, copy);
            Files.copy(Path.of(file + "-journal"), Path.of(copy + "-journal"));
            statement.execute("ROLLBACK");
        }
    }

    @Test
    void givesNothingOfWhatIsNoFileOrTooLarge() throws IOException {
        assertTrue(ClosedFile.read(folder).isEmpty());
        assertTrue(ClosedFile.read(folder.resolve("none")).isEmpty());
        assertTrue(ClosedFile.read(Files.createFile(folder.resolve("empty"))).isEmpty());
        Path large = folder.resolve("large");
        try (FileChannel channel = FileChannel.open(large, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            channel.write(java.nio.ByteBuffer.allocate(1), ClosedFile.LARGEST);
        }
        assertTrue(ClosedFile.read(large).isEmpty());
    }

    @Test
    void readsNoMoreThanManyWorkersHaveRoomFor() {
        assertEquals(32 << 20, ClosedFile.largest(512L << 20, 2));
        assertEquals(32 << 20, ClosedFile.largest(8L << 30, 4));
        assertEquals(4 << 20, ClosedFile.largest(512L << 20, 16));
        assertEquals(8 << 20, ClosedFile.largest(64L << 20, 1));
    }

    /** A second handle on it, closed, would let another program write into what that connection reads. */
    @Test
    void opensNoFileThatThisProgramHasOpenThroughSqliteUnderWhateverName() throws Exception {
        Path otherName = Files.createLink(folder.resolve("other-name.tautlog"), file);
        try (Connection reading = RecordingFile.openForReading(file);
                OtherProgram other = new OtherProgram(file)) {
            assertEquals(1, RecordingFile.query(reading, "SELECT count(*) FROM recording"));

            assertTrue(ClosedFile.read(file).isEmpty());
            assertTrue(ClosedFile.read(otherName).isEmpty());

            assertEquals(OtherProgram.BUSY, other.does("UPDATE recording SET winch = 'x'"), "its lock still holds");
        }
        assertTrue(ClosedFile.read(otherName).isPresent());
    }

    @Test
    void opensNoFileThatThisProgramWrites() throws IOException {
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            assertEquals(List.of(), writer.interrupted());
            assertTrue(ClosedFile.read(file).isEmpty());
        }
    }

    @Test
    void opensNoFileThatThisProgramCopiesNorOneThatItMakes() throws Exception {
        Path copy = folder.resolve("copy.tautlog");
        try (Connection copying = RecordingFile.beginCopy(file, copy, RecordingFile.PAGE_SIZE)) {
            assertFalse(copying.isClosed());
            assertTrue(ClosedFile.read(file).isEmpty());
            assertTrue(isOpen(copy));
        }
        assertFalse(isOpen(copy));
        assertTrue(ClosedFile.read(file).isPresent());
    }

    private static boolean isOpen(Path file) throws IOException {
        Object key = OpenConnections.key(file, Files.readAttributes(file, BasicFileAttributes.class));
        return OpenConnections.whileClosed(key, () -> false, true);
    }

    /** How many handles on {@code real} this program has. */
    private static int handles(Path real) throws IOException {
        int handles = 0;
        try (DirectoryStream<Path> open = Files.newDirectoryStream(Path.of("/proc/self/fd"))) {
            for (Path handle : open) {
                handles += isOf(real, handle) ? 1 : 0;
            }
        }
        return handles;
    }

    private static boolean isOf(Path real, Path handle) throws IOException {
        try {
            return Files.readSymbolicLink(handle).equals(real);
        } catch (NoSuchFileException e) {
            return false; // closed meanwhile: that of the listing itself, or one of another test's
        }
    }

    /** SQLite lets go of a connection's databases in order: first of the one in memory, which takes it a while. */
    private static Connection besideMuchInMemory(Path file) throws SQLException {
        Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:");
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA page_size = 512");
            statement.execute("CREATE TABLE much AS SELECT zeroblob(20000000)");
            OpenConnections.open(file, () -> connection);
            statement.execute("ATTACH '" + file + "' AS beside");
            statement.execute("SELECT * FROM beside.recording");
        }
        return connection;
    }

    private static Thread closing(Connection connection, List<Throwable> failures) {
        Thread thread = new Thread(() -> {
            try {
                connection.close();
            } catch (SQLException | RuntimeException e) {
                failures.add(e);
            }
        });
        thread.start();
        return thread;
    }

    /** The driver calls a connection closed before its handle is. */
    @Test
    void readsOnlyOnceTheHandleOfWhatAnotherThreadClosesIsGone() throws Exception {
        assumeTrue(Files.isDirectory(Path.of("/proc/self/fd")), "what is open is told by Linux only");
        Path real = file.toRealPath();
        Object key = OpenConnections.key(real, Files.readAttributes(real, BasicFileAttributes.class));
        List<Throwable> failures = new CopyOnWriteArrayList<>();
        for (int round = 0; round < 8; round++) {
            Connection connection = besideMuchInMemory(real);
            assertEquals(1, handles(real), "else this shows nothing");
            Thread closing = closing(connection, failures);
            int seen = -1;
            while (seen < 0 && closing.isAlive()) {
                seen = OpenConnections.whileClosed(key, () -> handles(real), -1);
            }
            closing.join();
            assertEquals(0, Math.max(0, seen));
            assertEquals(0, OpenConnections.whileClosed(key, () -> handles(real), -1), "all are closed");
        }
        assertEquals(List.of(), failures);
    }
}
