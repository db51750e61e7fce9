package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

class WriterLockTest {
    private static final int PROGRAMS = 3;
    private static final int TURNS = 400;

    /** Far more than a busy machine needs: who has not had its turns by then never will. */
    private static final int LIMIT_SECONDS = 60;

    @TempDir
    Path folder;

    @TempDir
    Path elsewhere;

    private Path file = Path.of("");
    private Path lockFile = Path.of("");

    @BeforeEach
    void name() {
        file = folder.resolve("day.tautlog");
        lockFile = folder.resolve("day.tautlog-lock");
    }

    @Test
    void isHeldByOneAndLeavesNothing() throws IOException {
        WriterLock lock = WriterLock.take(file);
        assertThrows(RecordingException.class, () -> WriterLock.take(file));

        lock.close();

        assertFalse(Files.exists(lockFile));
        WriterLock.take(file).close();
    }

    @Test
    void whoLetGoOfItTakesItFromNobody() throws IOException {
        WriterLock first = WriterLock.take(file);
        first.close();
        WriterLock second = WriterLock.take(file);

        first.close();

        assertTrue(Files.exists(lockFile));
        assertThrows(RecordingException.class, () -> WriterLock.take(file));
        second.close();
    }

    /** What a program that was killed leaves, and what a power cut may make of one that was let go. */
    @Test
    void takesALockFileThatNobodyHolds() throws IOException {
        for (String left : List.of("", "0", "anything")) {
            Files.writeString(lockFile, left);

            WriterLock.take(file).close();

            assertFalse(Files.exists(lockFile), left);
        }
    }

    /** Closing a second handle on the file would drop the lock of the first. */
    @Test
    void isOneUnderAllNamesOfTheFolder() throws Exception {
        Path link = Files.createSymbolicLink(elsewhere.resolve("link"), folder);
        Path otherName = link.resolve("day.tautlog");
        WriterLock lock = WriterLock.take(file);

        assertInUse(() -> WriterLock.take(otherName));

        assertInUseByAnotherProgram();
        lock.close();
        WriterLock.take(otherName).close();
        Files.delete(link);
    }

    /** As where the folder is mounted a second time: this program has the lock, by a name that is not known for the same. */
    @Test
    void leavesALockThatThisProgramHasByANameThatIsNotKnown() throws Exception {
        try (FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            assertInUse(() -> WriterLock.take(file));

            assertTrue(lock.isValid());
            assertInUseByAnotherProgram();
        }
    }

    @Test
    void whoOpenedItBeforeItWasLetGoDoesNotHoldIt() throws IOException {
        WriterLock lock = WriterLock.take(file);
        RandomAccessFile late = new RandomAccessFile(lockFile.toFile(), "rw");
        lock.close();

        assertFalse(WriterLock.isLocked(file, lockFile, late));
        assertFalse(Files.exists(lockFile));
    }

    @Test
    void whoOpenedItBeforeItWasMadeAnewDoesNotHoldIt() throws IOException {
        for (String madeAnew : List.of("", "0", "anything")) {
            WriterLock lock = WriterLock.take(file);
            RandomAccessFile late = new RandomAccessFile(lockFile.toFile(), "rw");
            lock.close();
            Files.writeString(lockFile, madeAnew);

            assertFalse(WriterLock.isLocked(file, lockFile, late), madeAnew);
            assertEquals(madeAnew, Files.readString(lockFile));
        }
    }

    /** A name is taken away only from a file that is marked. */
    @Test
    void whatCannotBeLetGoInOrderIsNoFailureAndIsTakenByTheNext() throws IOException {
        RandomAccessFile broken = new RandomAccessFile(lockFile.toFile(), "rw");
        broken.close();

        new WriterLock(lockFile, broken).close();

        assertTrue(Files.exists(lockFile));
        WriterLock.take(file).close();
        assertFalse(Files.exists(lockFile));
    }

    private static void assertInUse(Executable taking) {
        RecordingException refused = assertThrows(RecordingException.class, taking);
        assertTrue(String.valueOf(refused.getMessage()).contains("is being written"), refused.getMessage());
    }

    private void assertInUseByAnotherProgram() throws Exception {
        Process program = start("once", 1, 0);
        assertEquals("in use", said(program, "once"));
    }

    private Process start(String name, int turns, int seconds) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        WriterLockTest.class.getName(),
                        file.toString(),
                        Integer.toString(turns),
                        Integer.toString(seconds))
                .redirectErrorStream(true)
                .redirectOutput(elsewhere.resolve(name).toFile())
                .start();
    }

    private String said(Process program, String name) throws Exception {
        boolean ended = program.waitFor(2 * LIMIT_SECONDS, TimeUnit.SECONDS);
        program.destroyForcibly();
        String said = Files.readString(elsewhere.resolve(name));
        assertTrue(ended, "goes on and on: " + said);
        return said;
    }

    /** Each lets go of the lock while others are about to take it. */
    @Test
    void isNeverHeldByTwoPrograms() throws Exception {
        List<Process> programs = new ArrayList<>();
        for (int i = 0; i < PROGRAMS; i++) {
            programs.add(start("program-" + i, TURNS, LIMIT_SECONDS));
        }

        for (int i = 0; i < PROGRAMS; i++) {
            assertEquals("", said(programs.get(i), "program-" + i));
            assertEquals(0, programs.get(i).exitValue());
        }
        assertFalse(Files.exists(lockFile));
    }

    /** One of the programs: while it holds the lock nobody else may have marked the file. Says "in use" when its seconds are over. */
    public static void main(String[] args) throws IOException {
        Path file = Path.of(args[0]);
        Path mark = file.resolveSibling("mark");
        long start = System.nanoTime();
        for (int turns = Integer.parseInt(args[1]); turns > 0; ) {
            WriterLock lock;
            try {
                lock = WriterLock.take(file);
            } catch (RecordingException refused) {
                if (refused.scope() != RecordingException.Scope.THIS_FILE) {
                    throw refused;
                }
                if (System.nanoTime() - start >= TimeUnit.SECONDS.toNanos(Integer.parseInt(args[2]))) {
                    System.out.print("in use");
                    return;
                }
                Thread.yield();
                continue;
            }
            Files.createFile(mark);
            Files.delete(mark);
            lock.close();
            turns--;
        }
    }
}
