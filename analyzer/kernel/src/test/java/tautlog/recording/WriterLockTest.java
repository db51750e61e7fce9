package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WriterLockTest {
    private static final int PROGRAMS = 3;
    private static final int TURNS = 400;

    @TempDir
    Path folder;

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

    /** Each lets go of the lock while others are about to take it. */
    @Test
    void isNeverHeldByTwoPrograms() throws Exception {
        List<Process> programs = new ArrayList<>();
        for (int i = 0; i < PROGRAMS; i++) {
            programs.add(new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            WriterLockTest.class.getName(),
                            file.toString())
                    .redirectErrorStream(true)
                    .start());
        }

        for (Process program : programs) {
            String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, program.waitFor(), said);
        }
        assertFalse(Files.exists(lockFile));
    }

    /** One of the programs: while it holds the lock nobody else may have marked the file. */
    public static void main(String[] args) throws IOException {
        Path file = Path.of(args[0]);
        Path mark = file.resolveSibling("mark");
        for (int turns = 0; turns < TURNS; ) {
            WriterLock lock;
            try {
                lock = WriterLock.take(file);
            } catch (RecordingException inUse) {
                Thread.yield();
                continue;
            }
            Files.createFile(mark);
            Files.delete(mark);
            lock.close();
            turns++;
        }
    }
}
