package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.page.Ink;

class StandardOutputTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    /** Takes {@code room} bytes. */
    private static final class Full extends OutputStream {
        private int room;

        Full(int room) {
            this.room = room;
        }

        @Override
        public void write(int one) throws IOException {
            if (room == 0) {
                throw new IOException("No space left on device");
            }
            room--;
        }
    }

    private int code(String command, StandardOutput.End end, int room) {
        String[] args = command.replace("REC", folder.toString()).split(" ");
        return Tautlog.run(args, new StandardOutput(new Full(room), end), err, Ink.PLAIN);
    }

    private String said() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "report REC",
                "report REC --json",
                "report REC --html -",
                "export REC --csv - --seconds",
                "hours REC --no-cache",
                "verify REC",
                "--help"
            })
    void aResultThatCannotBeWrittenIsNotDone(String command) throws IOException {
        SampleDay.write(folder);

        int code = code(command, StandardOutput.End.OTHER, 100);

        assertEquals(Exits.UNUSABLE, code, said());
        assertTrue(said().startsWith("The standard output could not be written"), said());
        assertTrue(said().contains("No space left on device"), said());
    }

    @Test
    void aReaderThatHasSeenEnoughIsNoTrouble() throws IOException {
        SampleDay.write(folder);

        int code = code("export REC --csv - --seconds", StandardOutput.End.PIPE, 100);

        assertEquals(Exits.DONE, code);
        assertEquals("", said());
    }

    /** Wrong usage stays what it is. */
    @ParameterizedTest
    @EnumSource(StandardOutput.End.class)
    void anotherCodeIsKept(StandardOutput.End end) {
        assertEquals(Exits.USAGE, code("report REC --nosuch", end, 0));
    }

    @Test
    void tellsAPipeFromADeviceAndAFile() throws Exception {
        Path pipe = folder.resolve("pipe");
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo here");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());

        assertEquals(StandardOutput.End.PIPE, StandardOutput.end(pipe));
        assertEquals(StandardOutput.End.OTHER, StandardOutput.end(Path.of("/dev/full")));
        assertEquals(StandardOutput.End.OTHER, StandardOutput.end(Files.createFile(folder.resolve("file"))));
        assertEquals(StandardOutput.End.OTHER, StandardOutput.end(folder.resolve("none")));
    }

    /** From outside: a full device, and a reader that goes after one line. */
    @Test
    void theProgramTellsAFullDeviceAndIsQuietToHead() throws Exception {
        Path recording = SampleDay.write(folder);
        String run = Stream.concat(
                        Stream.of(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                "tautlog.desk.cli.Tautlog"),
                        Stream.of("export", recording.toString(), "--csv", "-"))
                .map(word -> "'" + word + "'")
                .reduce("", (all, word) -> all + " " + word);

        assertEquals(Exits.UNUSABLE, shell(run + " > /dev/full"));
        assertTrue(Files.readString(folder.resolve("err")).startsWith("The standard output could not"));
        assertEquals(Exits.DONE, shell("set -o pipefail; " + run + " | head -1"));
        assertEquals("", Files.readString(folder.resolve("err")));
    }

    private int shell(String line) throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/full")) && Files.isExecutable(Path.of("/bin/bash")), "no such system");
        Process process = new ProcessBuilder(Arrays.asList("/bin/bash", "-c", line))
                .redirectError(folder.resolve("err").toFile())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return process.exitValue();
    }
}
