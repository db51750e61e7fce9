package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import tautlog.logger.LoggerFolder;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.recorder.RecordingsFolder;

/** Exit codes and messages: 0 done, 2 usage or configuration, 3 a port or recording that cannot be used. */
@Timeout(30)
class TautlogDaemonTest {
    @TempDir
    Path path;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void startsItsHelpWithTwoExamples() {
        for (String command : new String[] {"run", "listen", "ports", "status", "mark", "simulate"}) {
            out.getBuffer().setLength(0);
            assertEquals(0, execute(command, "--help"));
            assertTrue(out.toString().startsWith("Examples:"), out::toString);
            assertEquals(
                    2,
                    out.toString()
                            .lines()
                            .filter(line -> line.startsWith("  tautlogd " + command))
                            .count());
        }
    }

    @Test
    void takesAMistypedFlagForWrongUseAndSuggestsTheRightOne() {
        assertEquals(2, execute("run", "--confg", "logger.toml"));
        assertTrue(err.toString().contains("--config"), err::toString);
    }

    @Test
    void listsThePortsThereAreWhenTheOneWantedIsMissing() throws IOException {
        // given
        Path port = path.resolve("ttyNONE");
        LoggerFolder folder = LoggerFolder.at(path, port.toString(), LoggerFolder.DEVICE_CLOCK);

        // then
        assertEquals(3, execute("run", "--config", folder.config().toString()));
        assertTrue(err.toString().contains("port " + port + " is not there"), err::toString);
        assertTrue(err.toString().contains("Ports there are:") || err.toString().contains("No serial port"));
    }

    @Test
    void saysThatAPortIsInUse() throws Exception {
        try (PseudoTerminal line = PseudoTerminal.open();
                InstrumentLine other = new SerialInstrumentPort(line.portName(), 115_200).open()) {
            LoggerFolder folder = LoggerFolder.at(path, line.portName(), LoggerFolder.DEVICE_CLOCK);

            assertEquals(3, execute("run", "--config", folder.config().toString()));
            assertEquals(0, other.read(new byte[1]));
        }
        assertTrue(err.toString().contains("cannot be opened") || err.toString().contains("in use"), err::toString);
    }

    @Test
    void tellsAWrongRigKeyWithItsLineAndTheNearest() throws IOException {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "/dev/ttyNONE", LoggerFolder.DEVICE_CLOCK);
        Files.writeString(path.resolve("rig.toml"), LoggerFolder.RIG.replace("rated_pull", "rated_pul"));

        // then
        assertEquals(2, execute("run", "--config", folder.config().toString()));
        assertTrue(err.toString().contains("rig.toml:4: winch.rated_pul"), err::toString);
        assertTrue(err.toString().contains("Did you mean rated_pull?"), err::toString);
        assertTrue(Files.notExists(folder.recordings()), "nothing was started");
    }

    @Test
    void recordsNoTransmitterWhoseOrderOfWordsIsNotProven() throws IOException {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "/dev/ttyNONE", "");
        Files.writeString(folder.config(), """
                schema = 1
                rig = "rig.toml"
                recordings = "recordings"
                [instrument]
                kind = "modbus"
                port = "/dev/ttyNONE"
                unit_id = 1
                register = 0
                register_kind = "holding"
                type = "float32"
                word_order = "ABCD"
                unit = "kN"
                decimals = 2
                poll_hz = 50.0
                full_scale = 60.0
                """);

        // then
        assertEquals(2, execute("run", "--config", folder.config().toString()));
        assertTrue(err.toString().contains("instrument.word_order_proof: is missing"), err::toString);
        assertTrue(Files.notExists(folder.recordings()), "nothing was started");
    }

    @Test
    void refusesARecordingsFolderThatIsTakenOrCannotBeMade() throws IOException {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "/dev/ttyNONE", LoggerFolder.DEVICE_CLOCK);

        // when another logger has it
        try (RecordingsFolder other = RecordingsFolder.claim(folder.recordings())) {
            assertEquals(3, execute("run", "--config", folder.config().toString()));
            assertTrue(err.toString().contains("in use by another tautlogd"), () -> err + " " + other.path());
        }

        // when a file stands in its place
        Files.writeString(path.resolve("taken"), "");
        Files.writeString(
                folder.config(), Files.readString(folder.config()).replace("\"recordings\"", "\"taken/recordings\""));
        assertEquals(3, execute("run", "--config", folder.config().toString()));
        assertTrue(err.toString().contains("cannot be written"), err::toString);
    }

    @Test
    void hasNothingToSayWhereNoLoggerEverRan() throws IOException {
        LoggerFolder folder = LoggerFolder.at(path, "/dev/ttyNONE", LoggerFolder.DEVICE_CLOCK);

        assertEquals(3, execute("status", "--config", folder.config().toString()));
        assertEquals(3, execute("mark", "--config", folder.config().toString(), "--note", "x"));
        assertEquals(2, execute("mark", "--config", folder.config().toString()));
        assertTrue(err.toString().contains("no logger runs on"), err::toString);
    }

    @Test
    void listsPortsAsOneDocument() {
        assertEquals(0, execute("ports", "--json"));
        assertEquals(
                1,
                JsonParser.parseString(out.toString())
                        .getAsJsonObject()
                        .get("schema")
                        .getAsInt());
    }

    private int execute(String... arguments) {
        CommandLine command = TautlogDaemon.commandLine();
        command.setOut(new PrintWriter(out, true));
        command.setErr(new PrintWriter(err, true));
        return command.execute(arguments);
    }
}
