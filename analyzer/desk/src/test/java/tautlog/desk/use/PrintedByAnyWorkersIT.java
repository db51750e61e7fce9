package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program prints the same, byte for byte, on a computer of one, two, three and seven cores. */
class PrintedByAnyWorkersIT {
    private static final Path ROOT = Path.of(System.getProperty("tautlog.root"));
    private static final Path JAR = ROOT.resolve(Path.of("analyzer", "desk", "target", "tautlog.jar"));
    private static final Path TASKS = ROOT.resolve(Path.of("samples", "service.toml"));

    @TempDir
    Path folder;

    /** Which cores the program sees; it takes as many workers. */
    private String printed(int cores, List<String> command, List<Path> folders) throws Exception {
        Path out = folder.resolve("out");
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:ActiveProcessorCount=" + cores,
                "-XX:+UseSerialGC",
                "-jar",
                JAR.toString()));
        words.addAll(command);
        folders.forEach(one -> words.add(one.toString()));
        Process program = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        assertTrue(program.waitFor(5, TimeUnit.MINUTES), command + " ends within five minutes");
        return program.exitValue() + "\n" + Files.readString(out);
    }

    private void sameByAny(String... words) throws Exception {
        List<String> command = List.of(words);
        List<Path> folders = recordings();
        String one = printed(1, command, folders);

        assertTrue(one.startsWith("3\n"), one);
        for (int cores : new int[] {2, 3, 7}) {
            assertEquals(one, printed(cores, command, folders), cores + " cores");
        }
    }

    private List<Path> recordings() throws IOException {
        return MixedRecordings.write(folder);
    }

    @Test
    void hours() throws Exception {
        sameByAny("hours", "--zone", "UTC", "--no-cache");
    }

    @Test
    void serviceList() throws Exception {
        sameByAny(
                "service",
                "list",
                "--tasks",
                TASKS.toString(),
                "--as-of",
                "2026-07-01T00:00:00Z",
                "--zone",
                "UTC",
                "--no-cache");
    }
}
