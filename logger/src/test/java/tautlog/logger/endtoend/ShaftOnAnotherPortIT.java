package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.LoggerFolder;
import tautlog.logger.pty.PseudoTerminal;

/** An indicator on one pseudo-terminal, a framed instrument that counts the shaft's pulses on another. */
@Timeout(120)
class ShaftOnAnotherPortIT {
    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "text"
            port = "./port"
            baud = 115200
            format = "sign-value-unit"
            length = 11
            unit = "kN"
            decimals = 2
            rate_hz = 50.0
            full_scale = 60.0
            [shaft]
            port = "./shaft"
            pulses_per_revolution = 6
            """;

    private static final int TENTHS = 120;
    private static final int SLOWER = 60;
    private static final double FAST_RPM = 540;
    private static final double SLOW_RPM = 300;

    /** Sends both in step: each tenth of a second five lines of text and the shaft's frame. */
    private static void tenths(PseudoTerminal tension, PseudoTerminal shaft, IndependentInstrument counter, int tenths)
            throws Exception {
        tension.write(".34 kN\r\n".getBytes(StandardCharsets.US_ASCII));
        long due = System.nanoTime();
        for (int k = 0; k < tenths; k++) {
            byte[] before = counter.bytesBefore(k * 50);
            byte[] after = counter.bytesBefore((k + 1) * 50);
            shaft.write(Arrays.copyOfRange(after, before.length, after.length));
            for (int i = 0; i < 5; i++) {
                double kilonewtons = k < 10 || k > 110 ? 0.02 : 12.34;
                tension.write(
                        String.format(Locale.ROOT, "+%7.2f kN\r\n", kilonewtons).getBytes(StandardCharsets.US_ASCII));
                due += 20_000_000L;
                Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
            }
        }
    }

    private static IndependentInstrument counter() {
        Drawing drawing = new Drawing((TENTHS + 1) * 50);
        drawing.turning(0, SLOWER * 50, FAST_RPM);
        drawing.turning(SLOWER * 50, drawing.samples(), SLOW_RPM);
        IndependentInstrument counter = new IndependentInstrument();
        counter.send(drawing);
        return counter;
    }

    @Test
    void theReportsShaftSpeedIsWhatThePeerTurned() throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of("shaft-on-another-port"), LoggerFolder.RIG, LOGGER);

        // when: 6 s at 540 rpm, 6 s at 300 rpm
        try (PseudoTerminal shaft = PseudoTerminal.open()) {
            shaft.linkAt(programs.path("shaft"));
            programs.recordAgainst(tension -> {
                assertTrue(shaft.waitForReader(Duration.ofSeconds(20)));
                tenths(tension, shaft, counter(), TENTHS);
                assertTrue(tension.waitUntilTaken(Duration.ofSeconds(20)));
            });
        }

        // then: of the twelve seconds one holds both speeds, the first knows none until seven pulses are known
        List<Double> speeds = speeds(programs);
        assertTrue(speeds.size() >= 9, speeds::toString);
        long fast = speeds.stream().filter(rpm -> near(rpm, FAST_RPM)).count();
        long slow = speeds.stream().filter(rpm -> near(rpm, SLOW_RPM)).count();
        assertTrue(fast >= 4 && slow >= 4, speeds::toString);
        assertTrue(speeds.size() - fast - slow <= 1, speeds::toString);

        // and
        JsonObject report = programs.report();
        JsonObject pull = Reported.only(report, "pulls");
        assertEquals(12_340, pull.get("peak_n").getAsDouble(), 1e-6);
        assertEquals(
                12 / 3_600.0, report.getAsJsonObject("hours").get("shaft_h").getAsDouble(), 1.5 / 3_600);
        assertEquals(
                0, report.getAsJsonObject("trust").getAsJsonObject("rejected").size(), report::toString);
    }

    /** Two thousandths (how the two times may be mended against each other) and a rounding. */
    private static boolean near(double rpm, double turned) {
        return Math.abs(rpm - turned) <= 0.003 * turned;
    }

    private static List<Double> speeds(BothPrograms programs) throws Exception {
        List<String> lines = programs.desk("export", "recordings", "--csv", "-", "--seconds")
                .lines()
                .toList();
        int shaft = Arrays.asList(lines.get(0).split(",")).indexOf("shaft_rpm");
        return lines.stream()
                .skip(1)
                .map(row -> row.split(",", -1)[shaft])
                .filter(rpm -> !rpm.isEmpty())
                .map(Double::valueOf)
                .toList();
    }

    @Test
    void listenShowsTheShaftOfTheOtherPort() throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of("listen-to-another-port"), LoggerFolder.RIG, LOGGER);
        try (PseudoTerminal tension = PseudoTerminal.open();
                PseudoTerminal shaft = PseudoTerminal.open()) {
            tension.linkAt(programs.path("port"));
            shaft.linkAt(programs.path("shaft"));
            Thread peer = new Thread(() -> {
                try {
                    tension.waitForReader(Duration.ofSeconds(20));
                    shaft.waitForReader(Duration.ofSeconds(20));
                    tenths(tension, shaft, counter(), 55);
                } catch (Exception unexpected) {
                    throw new IllegalStateException(unexpected);
                }
            });
            peer.start();

            // when
            String shown = programs.logger("listen", "--config", "logger.toml", "--seconds", "5");
            peer.join();

            // then
            assertTrue(shown.contains("shaft 540 rpm") || shown.contains("shaft 539 rpm"), shown);
            assertTrue(!shown.contains("NOT OPEN"), shown);
        }
    }

    @Test
    void listenSaysThatTheOtherPortIsNotThere() throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of("listen-without-another-port"), LoggerFolder.RIG, LOGGER);
        try (PseudoTerminal tension = PseudoTerminal.open()) {
            tension.linkAt(programs.path("port"));

            // then
            String shown = programs.logger("listen", "--config", "logger.toml", "--seconds", "2");
            assertTrue(shown.contains("shaft port " + programs.path("shaft") + " NOT OPEN"), shown);
        }
    }
}
