package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.pty.PseudoTerminal;

/** The packaged program at a serial device, its standard input a pipe: no calibration is there yet. */
@Timeout(120)
class CalibrateIT {
    @TempDir
    Path path;

    private Process start(String port, String... more) throws IOException {
        LoggerFolder folder = LoggerFolder.at(path, port, LoggerFolder.HOST_CLOCK);
        String toml = Files.readString(folder.config());
        Files.writeString(
                folder.config(), toml.substring(0, toml.indexOf("zero_counts")) + "file = \"calibration.toml\"\n");
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                StartedDaemon.JAR.toString(),
                "calibrate",
                "--config",
                folder.config().toString(),
                "--over",
                "1s"));
        command.addAll(List.of(more));
        return new ProcessBuilder(command)
                .redirectError(path.resolve("stderr.txt").toFile())
                .start();
    }

    @Test
    void collectsAReadingForEachLineOfThePipe() throws Exception {
        Path table = path.resolve("readings.csv");
        try (PseudoTerminal line = PseudoTerminal.open()) {
            Process program = start(line.portName(), "-o", table.toString());
            assertTrue(line.waitForReader(Duration.ofSeconds(20)), () -> "it did not open the port");
            try (HungLoad load = new HungLoad(line::write);
                    BufferedReader out = program.inputReader(StandardCharsets.UTF_8);
                    Writer in = program.outputWriter(StandardCharsets.UTF_8)) {
                for (String typed : List.of("0 up", "10 up", "20 up", "10 down")) {
                    load.hang(4_000 + 20_000 * Integer.parseInt(typed.split(" ")[0]));
                    in.write(typed + "\n");
                    in.flush();
                    String said = String.valueOf(out.readLine());
                    assertTrue(said.contains("kN counts"), said);
                }
            }

            assertTrue(program.waitFor(30, TimeUnit.SECONDS));
            assertEquals(0, program.exitValue(), Files.readString(path.resolve("stderr.txt")));
            assertEquals("", Files.readString(path.resolve("stderr.txt")), "no question to a pipe");
        }
        List<String> rows = Files.readAllLines(table);
        assertEquals(5, rows.size(), rows::toString);
        assertEquals(204_000, Double.parseDouble(rows.get(2).split(",")[2]), 1);
        assertTrue(rows.get(4).startsWith("10,kN,") && rows.get(4).contains(",down,"), rows.get(4));
    }

    @Test
    void leavesATableAloneThatIsThere() throws Exception {
        Path table = Files.writeString(path.resolve("readings.csv"), "mine");

        Process program = start("/dev/null", "-o", table.toString());

        assertTrue(program.waitFor(30, TimeUnit.SECONDS));
        assertEquals(2, program.exitValue());
        assertEquals("mine", Files.readString(table));
    }
}
