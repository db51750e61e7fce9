package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.LoggerRun.Until;

/** Instruments that people own, on pseudo-terminals, through the whole logger into a recording. */
@Timeout(60)
class OwnInstrumentsRunTest {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final String TEXT = "kind = \"text\"\nformat = \"sign-value-unit\"\nlength = 11\nrate_hz = 100.0\n";

    @TempDir
    Path path;

    private LoggerFolder folder(PseudoTerminal port, String keys, String more) throws Exception {
        return folder(port.portName(), keys, more);
    }

    private LoggerFolder folder(String port, String keys, String more) throws Exception {
        LoggerFolder folder = LoggerFolder.at(path, port, "");
        Files.writeString(folder.config(), """
                schema = 1
                rig = "rig.toml"
                recordings = "recordings"
                [instrument]
                port = "%s"
                baud = 115200
                unit = "kN"
                decimals = 2
                full_scale = 60.0
                %s%s""".formatted(port, keys, more));
        return folder;
    }

    private static Thread started(LoggerFolder folder, LoggerRun[] run, Until until) throws Exception {
        var installation = folder.installation();
        run[0] = new LoggerRun(
                installation, new SerialInstrumentPort(installation.config().line()), until, "tautlogd test");
        Thread thread = new Thread(() -> {
            try {
                run[0].run();
            } catch (Exception unexpected) {
                throw new IllegalStateException(unexpected);
            }
        });
        thread.start();
        return thread;
    }

    @Test
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    void recordsAHundredLinesASecondOverANoisyLineWithoutAWrongNumber() throws Exception {
        // given
        Random random = new Random(8);
        List<Integer> sent = new ArrayList<>();
        Thread logger;
        LoggerFolder folder;
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            folder = folder(terminal, TEXT, "");
            logger = started(folder, new LoggerRun[1], Until.CLOSED);
            assertTrue(terminal.waitForReader(PATIENCE));

            // when: 4 s; a tenth of the lines is cut, hit by noise or in another unit
            terminal.write(".34 kN\r\n".getBytes(StandardCharsets.US_ASCII));
            long due = System.nanoTime();
            for (int i = 0; i < 400; i++) {
                int counts = random.nextInt(6_000);
                StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "+%7.2f kN", counts / 100.0));
                if (i % 30 == 7) {
                    line.delete(random.nextInt(10), 11);
                } else if (i % 30 == 17) {
                    line.setCharAt(random.nextInt(11), (char) (128 + random.nextInt(128)));
                } else if (i % 30 == 27) {
                    line.replace(9, 11, "lb");
                } else {
                    sent.add(counts);
                }
                terminal.write((line + "\r\n").getBytes(StandardCharsets.ISO_8859_1));
                due += 10_000_000L;
                Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
            }
            assertTrue(terminal.waitUntilTaken(PATIENCE));
        }
        logger.join();

        // then: what was good, and nothing else
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertTrue(outing.outing().ended());
        assertEquals(sent, outing.counts());
        List<String> tallies = outing.of("tally");
        String last = tallies.get(tallies.size() - 1);
        for (String kind : List.of("WRONG_UNIT=13", "UNKNOWN_LINE=", "WRONG_LENGTH=")) {
            assertTrue(last.contains(kind), kind + " in " + last);
        }
        assertEquals(360, sent.size());
    }

    /** 115,200 baud are 886 lines of 13 bytes a second; a pseudo-terminal takes them as fast as the logger reads. */
    @Test
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    void recordsLinesThatComeBackToBackAsFastAsTheLineTakesThem() throws Exception {
        // given: four lines in a hundred are no readings, each for another reason
        Random random = new Random(9);
        List<Integer> sent = new ArrayList<>();
        StringBuilder lines = new StringBuilder("4 kN\r\n");
        for (int i = 0; i < 30_000; i++) {
            int counts = random.nextInt(6_000);
            String good = String.format(Locale.ROOT, "+%7.2f kN", counts / 100.0);
            switch (i % 100) {
                case 20 -> lines.append(good, 0, 7);
                case 40 ->
                    lines.append(good, 0, 8)
                            .append((char) (128 + random.nextInt(128)))
                            .append(" kN", 0, 2);
                case 60 -> lines.append(good, 0, 9).append("lb");
                case 80 -> lines.append("+  99.99 kN");
                default -> {
                    sent.add(counts);
                    lines.append(good);
                }
            }
            lines.append("\r\n");
        }

        // when
        LoggerRun[] run = new LoggerRun[1];
        Thread logger;
        LoggerFolder folder;
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            folder = folder(terminal, TEXT.replace("100.0", "886.0"), "");
            logger = started(folder, run, Until.CLOSED);
            assertTrue(terminal.waitForReader(PATIENCE));
            terminal.write(lines.toString().getBytes(StandardCharsets.ISO_8859_1));
            assertTrue(terminal.waitUntilTaken(PATIENCE));
        }
        logger.join();

        // then: each good line once, in order; each other one counted by its kind
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(0, run[0].status().disk().lostSamples());
        assertEquals(sent, outing.counts());
        assertEquals(
                Map.of("WRONG_LENGTH", 300L, "UNKNOWN_LINE", 300L, "WRONG_UNIT", 300L, "OUT_OF_RANGE", 300L),
                run[0].status().line().tally().rejected());
    }

    @Test
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    void goesOnWithAnIndicatorThatFallsSilentIsUnpluggedAndComesBackUnderTheSameLink() throws Exception {
        // given
        Path link = path.resolve("indicator");
        LoggerFolder folder = folder(link.toString(), TEXT, "");
        LoggerRun[] run = new LoggerRun[1];
        Thread logger;
        try (PseudoTerminal first = PseudoTerminal.open()) {
            first.linkAt(link);
            logger = started(folder, run, Until.STOPPED);
            assertTrue(first.waitForReader(PATIENCE));
            lines(first, "\r\n", 100, 150);

            // when: silent for a second and a half, then a line that the pulled plug cuts
            Thread.sleep(1_500);
            lines(first, "", 150, 200);
            first.write("+  12.".getBytes(StandardCharsets.US_ASCII));
            assertTrue(first.waitUntilTaken(PATIENCE));
        }
        await(() -> !run[0].status().portOpen());
        Thread.sleep(500);
        try (PseudoTerminal second = PseudoTerminal.open()) {
            second.linkAt(link);
            assertTrue(second.waitForReader(PATIENCE));
            lines(second, "34 kN\r\n", 200, 250); // the end of a line that nobody heard begin
            assertTrue(second.waitUntilTaken(PATIENCE));
            run[0].stop();
            logger.join();
        }

        // then: one outing, every whole line once, the times without a reading are gaps in the numbers
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(IntStream.range(100, 250).boxed().toList(), outing.counts());
        assertEquals(Map.of(), run[0].status().line().tally().rejected());
        List<Long> numbers = outing.of("tension").stream()
                .map(line -> Long.valueOf(line.split(" ")[1]))
                .toList();
        assertTrue(gapBefore(numbers, 50) >= 150, numbers::toString);
        assertTrue(gapBefore(numbers, 100) >= 50, numbers::toString);
        assertEquals(1, run[0].status().hangUps());
    }

    /** 0.01 kN to the count, a hundred a second. */
    private static void lines(PseudoTerminal to, String before, int from, int end) throws Exception {
        to.write(before.getBytes(StandardCharsets.US_ASCII));
        long due = System.nanoTime();
        for (int counts = from; counts < end; counts++) {
            to.write(String.format(Locale.ROOT, "+%7.2f kN\r\n", counts / 100.0).getBytes(StandardCharsets.US_ASCII));
            due += 10_000_000L;
            Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
        }
    }

    private static long gapBefore(List<Long> numbers, int index) {
        return numbers.get(index) - numbers.get(index - 1);
    }

    private static void await(BooleanSupplier condition) throws InterruptedException {
        while (!condition.getAsBoolean()) {
            Thread.sleep(20);
        }
    }

    @Test
    void joinsTheShaftOfASecondPort() throws Exception {
        // given
        SmallInstrument counter = new SmallInstrument(3);
        LoggerRun[] run = new LoggerRun[1];
        LoggerFolder folder;
        Thread logger;
        try (PseudoTerminal tension = PseudoTerminal.open();
                PseudoTerminal shaft = PseudoTerminal.open()) {
            folder = folder(tension, TEXT, "[shaft]\nport = \"" + shaft.portName() + "\"\npulses_per_revolution = 6\n");
            logger = started(folder, run, Until.STOPPED);
            assertTrue(tension.waitForReader(PATIENCE));
            assertTrue(shaft.waitForReader(PATIENCE));

            // when: 2 s at 540 rpm
            long due = System.nanoTime();
            for (int i = 0; i < 200; i++) {
                tension.write("+  12.34 kN\r\n".getBytes(StandardCharsets.US_ASCII));
                if (i % 10 == 9) {
                    shaft.write(counter.hold(0, 50).take());
                }
                due += 10_000_000L;
                Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
            }
            assertTrue(tension.waitUntilTaken(PATIENCE));
            assertTrue(shaft.waitUntilTaken(PATIENCE));
            run[0].stop();
            logger.join();
        }

        // then
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertTrue(outing.of("shaft").size() >= 15, outing.of("shaft")::toString);
        assertEquals(
                540.0,
                outing.seconds().stream()
                        .flatMap(second -> second.shaftRpm().stream().boxed())
                        .findFirst()
                        .orElseThrow(),
                1.0);
        assertTrue(run[0].status().shaft().isPresent());
    }

    @Test
    void stopsInTimeThoughAModbusDeviceAnswersNothing() throws Exception {
        // given
        LoggerRun[] run = new LoggerRun[1];
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            LoggerFolder folder = folder(
                    terminal,
                    "kind = \"modbus\"\nunit_id = 1\nregister = 0\nregister_kind = \"holding\"\ntype = \"int16\"\n"
                            + "poll_hz = 50.0\ntimeout = \"0.05 s\"\n",
                    "");
            Thread logger = started(folder, run, Until.STOPPED);
            assertTrue(terminal.waitForReader(PATIENCE));
            while (run[0].status().line().tally().rejected().getOrDefault("TIMEOUT", 0L) < 3) {
                Thread.sleep(20);
            }

            // when
            long before = System.nanoTime();
            run[0].stop();
            logger.join(10_000);

            // then
            assertTrue(!logger.isAlive() && System.nanoTime() - before < 5_000_000_000L, "stops");
            assertEquals("fault", run[0].status().beacon());
        }
    }
}
