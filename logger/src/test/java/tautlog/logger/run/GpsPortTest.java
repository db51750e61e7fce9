package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.control.Status.GpsStatus;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.LoggerRun.Until;

/** A receiver on a pseudo-terminal beside an instrument, on a computer that does not know the time. */
@Timeout(60)
@EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made on Linux only")
class GpsPortTest {
    private static final Instant TRUE_TIME = Instant.parse("2026-05-04T07:00:00Z");
    private static final Instant CLOCK_WITHOUT_BATTERY = Instant.parse("1970-01-01T00:02:00Z");

    @TempDir
    Path path;

    private final ScriptedPort port = new ScriptedPort();
    private final SmallInstrument instrument = new SmallInstrument(7);
    private PseudoTerminal receiver;
    private LoggerFolder folder;

    @BeforeEach
    void aReceiver() throws IOException {
        receiver = PseudoTerminal.open();
    }

    @AfterEach
    void unplug() {
        receiver.close();
    }

    private LoggerRun logger(String clock, Instant hostTime) throws Exception {
        folder = LoggerFolder.at(path, "scripted", clock);
        String gps = "[gps]\nport = \"" + receiver.portName() + "\"\n";
        Files.writeString(folder.config(), gps, StandardOpenOption.APPEND);
        Board here = Board.here(folder.recordings());
        LoggerRun logger = new LoggerRun(
                folder.installation(),
                port,
                Until.CLOSED,
                "tautlogd test",
                new Board(() -> hostTime, here.space(), here.disk()));
        return logger;
    }

    private Thread start(LoggerRun logger) {
        Thread thread = new Thread(() -> {
            try {
                logger.run();
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        thread.start();
        return thread;
    }

    private static void await(String what, BooleanSupplier holds) throws InterruptedException {
        for (int look = 0; look < 1_000 && !holds.getAsBoolean(); look++) {
            Thread.sleep(10);
        }
        assertTrue(holds.getAsBoolean(), () -> "waited in vain for " + what);
    }

    private void tell(String between) throws IOException, InterruptedException {
        int sum = between.chars().reduce(0, (a, b) -> a ^ b);
        byte[] line = "$%s*%02X\r\n".formatted(between, sum).getBytes(StandardCharsets.US_ASCII);
        receiver.write(line);
    }

    private void tellFix(Instant utc) throws IOException, InterruptedException {
        String time = DateTimeFormatter.ofPattern("HHmmss", Locale.ROOT)
                .withZone(ZoneOffset.UTC)
                .format(utc);
        String date = DateTimeFormatter.ofPattern("ddMMyy", Locale.ROOT)
                .withZone(ZoneOffset.UTC)
                .format(utc);
        tell("GPGGA," + time + ",4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,");
        tell("GPRMC," + time + ",A,4807.038,N,01131.000,E,000.0,084.4," + date + ",,,A");
    }

    private static GpsStatus gps(LoggerRun logger) {
        return logger.status().gps().orElseThrow();
    }

    @Test
    void datesAnOutingAndSaysWhereItWas() throws Exception {
        // given a receiver that knows both
        LoggerRun logger = logger("clock = \"gps\"\n", CLOCK_WITHOUT_BATTERY);
        Thread run = start(logger);
        await("the receiver's port", () -> gps(logger).portOpen());
        tellFix(TRUE_TIME);
        await("a fix", () -> gps(logger).place().isPresent() && gps(logger).utcKnown());

        // when
        port.bring(instrument.hold(0, 500).take());
        await(
                "samples",
                () -> logger.status().outing().filter(o -> o.samples() == 500).isPresent());
        tellFix(TRUE_TIME.plusSeconds(1));
        Thread.sleep(1_100); // the next second of the receiver
        tellFix(TRUE_TIME.plusSeconds(2));
        await("both", () -> gps(logger).place().isPresent());
        Thread.sleep(300);
        port.bring(instrument.hold(0, 500).take()).hangUp();
        run.join();

        // then
        StoredOuting outing = stored();
        List<String> places = outing.of("position");
        assertTrue(places.size() >= 1 && places.size() <= 3, places::toString);
        assertTrue(
                places.get(0).contains("latitudeE7=481173000, longitudeE7=115166667, satellites=8"), places::toString);
        long micros = Long.parseLong(outing.of("clock").get(0).split(" ")[2]);
        long lateMillis = ChronoUnit.MILLIS.between(TRUE_TIME, Instant.EPOCH.plus(micros, ChronoUnit.MICROS));
        assertTrue(lateMillis >= 0 && lateMillis < 5_000, lateMillis + " ms after the receiver's time");
    }

    @Test
    void takesTheReceiversTimeWhereTheComputersIsNotKnown() throws Exception {
        LoggerRun logger = logger("clock = \"host\"\n", CLOCK_WITHOUT_BATTERY);
        Thread run = start(logger);
        await("the receiver's port", () -> gps(logger).portOpen());
        tellFix(TRUE_TIME);
        await("a time", () -> gps(logger).utcKnown());

        port.bring(instrument.hold(0, 500).take()).hangUp();
        run.join();

        assertTrue(stored().of("clock").get(0).startsWith("clock 1000000 17778780"), "2026-05-04T07:00:0x");
    }

    @Test
    void leavesTheComputersTimeWhereThatIsKnown() throws Exception {
        LoggerRun logger = logger("clock = \"host\"\n", Instant.parse("2026-06-01T00:00:00Z"));
        Thread run = start(logger);
        await("the receiver's port", () -> gps(logger).portOpen());
        tellFix(TRUE_TIME);
        await("a time", () -> gps(logger).utcKnown());

        port.bring(instrument.hold(0, 500).take()).hangUp();
        run.join();

        assertEquals(List.of("clock 1000000 1780272000000000"), stored().of("clock"), "2026-06-01T00:00:00Z");
    }

    @Test
    void leavesTimeAndPlaceUnknownWithoutAFix() throws Exception {
        // given a receiver that sees no satellite, and damage on its line
        LoggerRun logger = logger("clock = \"gps\"\n", Instant.parse("2026-06-01T00:00:00Z"));
        Thread run = start(logger);
        await("the receiver's port", () -> gps(logger).portOpen());
        tell("GPRMC,,V,,,,,,,,,,N");
        tell("GPGGA,,,,,,0,00,,,M,,M,,");
        byte[] damaged = "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6B\r\n"
                .getBytes(StandardCharsets.US_ASCII);
        receiver.write(damaged);
        await("the damage", () -> gps(logger).rejected().equals(Map.of("BAD_CHECKSUM", 1L)));

        port.bring(instrument.hold(0, 500).take()).hangUp();
        run.join();

        assertEquals(List.of(), stored().of("clock"));
        assertEquals(List.of(), stored().of("position"));
    }

    @Test
    void recordsWithoutTheReceiverAndFindsItWhenItIsPluggedIn() throws Exception {
        // given a port that is not there
        folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        Files.writeString(folder.config(), "[gps]\nport = \"./receiver\"\n", StandardOpenOption.APPEND);
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test");
        Thread run = start(logger);
        port.bring(instrument.hold(0, 500).take());
        await(
                "samples",
                () -> logger.status().outing().filter(o -> o.samples() == 500).isPresent());
        assertTrue(gps(logger).place().isEmpty() && !gps(logger).portOpen());

        // when it comes, and goes again
        receiver.linkAt(path.resolve("receiver"));
        await("the receiver's port", () -> gps(logger).portOpen());
        tellFix(TRUE_TIME);
        await("a fix", () -> gps(logger).place().isPresent());
        receiver.close();
        await("its end", () -> !gps(logger).portOpen());
        port.bring(instrument.hold(0, 500).take()).hangUp();
        run.join();

        // then
        assertEquals(instrument.sent(), stored().counts());
    }

    private StoredOuting stored() throws IOException {
        return StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
    }
}
