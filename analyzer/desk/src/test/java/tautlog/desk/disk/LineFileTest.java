package tautlog.desk.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Torn ends, kills and several programs at once are tried with the ledger, in {@code LedgerFileTest}. */
class LineFileTest {
    @TempDir
    Path folder;

    @Test
    void beginsALineOfItsOwnBehindATornOne() throws IOException {
        Path path = Files.writeString(folder.resolve("lines"), "whole\nto");

        new LineFile(path).append("next");

        assertEquals("whole\nto\nnext\n", Files.readString(path));
    }

    @Test
    void addsNothingWhenThereIsNoRoomForTheWholeLine() throws IOException {
        Path path = folder.resolve("lines");
        LineFile file = new LineFile(path, 10);
        file.append("four");

        assertThrows(IOException.class, () -> file.append("fives"));
        file.append("four");

        assertEquals("four\nfour\n", new String(file.bytes(), StandardCharsets.UTF_8));
        Files.writeString(path, "more than ten");
        assertThrows(IOException.class, file::bytes);
    }

    /** A limit on the size of files lets a part of a write through, as a disk does that becomes full. */
    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "ulimit")
    void takesHalfALineBackWhenTheDiskIsFull() throws Exception {
        Path path = folder.resolve("lines");
        Process process = new ProcessBuilder(
                        "sh",
                        "-c",
                        "ulimit -f 8; exec \"$@\"",
                        "sh",
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:-UsePerfData",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Filler.class.getName(),
                        path.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));

        List<String> lines = Files.readAllLines(path);
        assertEquals("failed after " + lines.size() + "\n", said);
        assertTrue(lines.size() > 1);
        assertTrue(lines.stream().allMatch(Filler.LINE::equals));
        assertTrue(Files.readString(path).endsWith("\n"));
    }

    /** Appends until it fails and says how many lines there are then. */
    static final class Filler {
        static final String LINE = "x".repeat(99);

        private Filler() {}

        public static void main(String[] args) {
            LineFile file = new LineFile(Path.of(args[0]));
            int lines = 0;
            try {
                while (true) {
                    file.append(LINE);
                    lines++;
                }
            } catch (IOException full) {
                System.out.println("failed after " + lines);
            }
        }
    }
}
