package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.config.ConfigException;
import tautlog.logger.ScriptedPort;
import tautlog.logger.calibrate.ReadingsFile;
import tautlog.logger.config.LoggerConfig;
import tautlog.logger.instrument.modbus.IndependentSlave;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.CountWatch;
import tautlog.quantity.ForceUnit;

/** Loads are hung while lines are typed; 8 counts of noise, a mean is known to a count. */
@Timeout(60)
class CalibrationTalkTest {
    private static final String UNPROVEN_ORDER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "modbus"
            port = "scripted"
            unit_id = 1
            register = 0
            register_kind = "holding"
            type = "float32"
            word_order = "ABCD"
            unit = "kN"
            decimals = 2
            poll_hz = 50.0
            full_scale = 60.0
            [calibration]
            zero_counts = 0.0
            newtons_per_count = 1.0
            """;

    @TempDir
    Path folder;

    private final ScriptedPort port = new ScriptedPort();
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private HungLoad load;
    private CountWatch counts;

    @BeforeEach
    void listen() throws IOException, ConfigException {
        load = new HungLoad(port::bring);
        counts = new CountWatch(framed(), port, new BigDecimal("1"));
    }

    private static LoggerConfig framed() throws ConfigException {
        return LoggerConfig.parse(Path.of("logger.toml"), """
                schema = 1
                rig = "rig.toml"
                recordings = "recordings"
                [instrument]
                port = "scripted"
                [calibration]
                zero_counts = 0.0
                newtons_per_count = 1.0
                """);
    }

    @AfterEach
    void stop() {
        counts.close();
        load.close();
    }

    private CalibrationTalk talk(long waitMillis, Optional<BigDecimal> shuntOfTheDay) throws IOException {
        return new CalibrationTalk(
                counts,
                waitMillis,
                ForceUnit.KN,
                Optional.of(ReadingsFile.create(folder.resolve("readings.csv"))),
                shuntOfTheDay,
                new CalibrationTalk.Prompts(new PrintWriter(err), false),
                new PrintWriter(out));
    }

    /** Each line is typed when the loads before have been read; then its counts hang. */
    private BufferedReader typing(Object... linesAndCounts) {
        return new BufferedReader(new StringReader("")) {
            private int at;

            @Override
            public String readLine() {
                if (at == linesAndCounts.length) {
                    return null;
                }
                load.hang((Integer) linesAndCounts[at + 1]);
                at += 2;
                return (String) linesAndCounts[at - 2];
            }
        };
    }

    private List<String> rows() throws IOException {
        return Files.readAllLines(folder.resolve("readings.csv"));
    }

    @Test
    void writesARowForEachLoadAndTheShunt() throws Exception {
        int exit = talk(20_000, Optional.of(new BigDecimal("50000")))
                .takeReadings(typing(
                        "0 up 1", 4_000, "10 up 1", 204_000, "2000 lbf down 1", 181_000, "shunt", 231_100, "done", 0));

        assertEquals(0, exit, err::toString);
        assertEquals("load,unit,counts,direction,run,time,sd_counts,n", rows().get(0));
        assertRow("0,kN,", 4_000, ",up,1,", rows().get(1));
        assertRow("10,kN,", 204_000, ",up,1,", rows().get(2));
        assertRow("2000,lbf,", 181_000, ",down,1,", rows().get(3));
        assertRow("2000,lbf,", 231_100, ",shunt,1,", rows().get(4));
        assertTrue(rows().get(1).endsWith(",500"), rows().get(1));
        assertTrue(out.toString().contains("it was 50000.0 counts: +0.2"), out::toString);
        assertEquals("", err.toString(), "no question where no person sits");
    }

    private static void assertRow(String begin, double mean, String middle, String row) {
        assertTrue(row.startsWith(begin) && row.contains(middle), row);
        assertEquals(mean, Double.parseDouble(row.split(",")[2]), 1, row);
    }

    @Test
    void waitsWhileTheLoadSwingsAndWritesNothingThen() throws Exception {
        load.swing(true);

        int exit = talk(1_500, Optional.empty()).takeReadings(typing("10", 204_000));

        assertEquals(ExitCode.UNUSABLE, exit);
        assertEquals(1, rows().size());
        assertTrue(err.toString().contains("the counts still move by"), err::toString);
    }

    @Test
    void takesNoCountsOfTheLoadBeforeForThoseOfTheNext() throws Exception {
        int exit = talk(1_500, Optional.empty()).takeReadings(typing("0", 4_000, "10", 4_000));

        assertEquals(ExitCode.UNUSABLE, exit);
        assertEquals(2, rows().size());
        assertTrue(err.toString().contains("have not moved"), err::toString);
    }

    @Test
    void saysWhenTheShuntsStepIsMoreThanOnePercentOff() throws Exception {
        int exit = talk(20_000, Optional.of(new BigDecimal("50000"))).checkShunt(typing("", 50_600));

        assertEquals(ExitCode.FOUND, exit);
        assertTrue(out.toString().contains("MORE THAN 1 % OFF"), out::toString);
    }

    @Test
    void refusesWhatItCannotReadAndAShuntWithoutALoadBefore() throws Exception {
        int exit = talk(1_500, Optional.empty()).takeReadings(typing("ten", 0, "shunt", 0));

        assertEquals(ExitCode.USAGE, exit);
        assertEquals(1, rows().size());
        assertTrue(err.toString().contains("\"ten\" is no load"), err::toString);
        assertTrue(err.toString().contains("take a reading without the shunt first"), err::toString);
    }

    @Test
    void saysThatTheOrderOfWordsIsUnprovenAndWaitsNoLonger() throws Exception {
        // given: a device that answers, and a configuration that does not prove the order of its words
        counts.close();
        try (PseudoTerminal terminal = PseudoTerminal.open();
                IndependentSlave device = new IndependentSlave(
                        terminal, asked -> IndependentSlave.registers(asked, 0x41, 0x45, 0x70, 0xA4))) {
            LoggerConfig unproven =
                    LoggerConfig.parse(Path.of("logger.toml"), UNPROVEN_ORDER.replace("scripted", terminal.portName()));
            counts = new CountWatch(unproven, new SerialInstrumentPort(unproven.line()), new BigDecimal("1"));

            // when: the wait is longer than this test may last
            int exit = talk(600_000, Optional.empty()).takeReadings(typing("10", 0));

            // then
            assertEquals(ExitCode.UNUSABLE, exit);
            assertTrue(err.toString().contains("order of words UNPROVEN"), err::toString);
            assertTrue(err.toString().contains("bytes = \"41 45 70 A4\""), err::toString);
            assertEquals("", device.trouble());
            counts.close();
        }
    }

    @Test
    void neverOverwritesATable() throws Exception {
        Path there = Files.writeString(folder.resolve("there.csv"), "mine");

        assertThrows(IOException.class, () -> ReadingsFile.create(there));
        assertEquals("mine", Files.readString(there));
    }
}
