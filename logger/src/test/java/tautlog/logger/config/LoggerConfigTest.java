package tautlog.logger.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.sample.Calibration;

class LoggerConfigTest {
    private static final Path FILE = Path.of("/etc/tautlog/logger.toml");
    private static final String LEAST = """
            schema = 1
            rig = "rig.toml"
            recordings = "../recordings"
            [instrument]
            port = "/dev/ttyACM0"
            [calibration]
            zero_counts = -12.5
            newtons_per_count = 0.0123
            """;

    @Test
    void readsTheLeastThatIsNeededAndTakesPathsFromTheFilesFolder() throws ConfigException {
        // when
        LoggerConfig config = LoggerConfig.parse(FILE, LEAST);

        // then
        assertEquals(
                new LoggerConfig(
                        Path.of("/etc/tautlog/rig.toml"),
                        Path.of("/etc/recordings"),
                        "/dev/ttyACM0",
                        115_200,
                        new ClockChoice.Host(),
                        new CalibrationChoice.Written(CellCalibration.written(Calibration.of("-12.5", "0.0123"))),
                        ZeroChoice.FIXED,
                        Optional.empty()),
                config);
    }

    @Test
    void readsEveryKeyThereIs() throws ConfigException {
        // when
        LoggerConfig config = LoggerConfig.parse(FILE, """
                schema = 1
                rig = "/srv/rig.toml"
                recordings = "/srv/recordings"
                [instrument]
                kind = "framed"
                port = "COM3"
                baud = 921600
                clock = "device"
                start_utc = 2026-05-04T09:00:00+02:00
                [calibration]
                file = "calibration.toml"
                zero = "follow"
                [gps]
                port = "/dev/ttyUSB1"
                baud = 4800
                """);

        // then
        assertEquals(
                new LoggerConfig(
                        Path.of("/srv/rig.toml"),
                        Path.of("/srv/recordings"),
                        "COM3",
                        921_600,
                        new ClockChoice.Device(Instant.parse("2026-05-04T07:00:00Z")),
                        new CalibrationChoice.InFile(Path.of("/etc/tautlog/calibration.toml")),
                        ZeroChoice.FOLLOW,
                        Optional.of(new GpsChoice("/dev/ttyUSB1", 4_800))),
                config);
    }

    @Test
    void tellsAllProblemsAtOnceEachWithItsLine() {
        // when
        List<Problem> problems = problems("""
                schema = 2
                rig = 7
                recording = "recordings"
                [instrument]
                prot = "/dev/ttyACM0"
                baud = "fast"
                clock = "device"
                [calibration]
                zero_counts = 0
                newtons_per_count = 0
                """);

        // then
        assertEquals(
                List.of(
                        "1 schema",
                        "1 recordings",
                        "2 rig",
                        "3 recording",
                        "4 instrument.port",
                        "4 instrument.start_utc",
                        "5 instrument.prot",
                        "6 instrument.baud",
                        "10 calibration.newtons_per_count"),
                problems.stream().map(p -> p.line() + " " + p.key()).toList());
    }

    @Test
    void offersTheNearestKeyForAnUnknownOne() {
        List<Problem> problems = problems(LEAST.replace("port =", "prot ="));

        assertTrue(
                problems.stream().anyMatch(p -> p.allowed().contains("Did you mean port?")), () -> problems.toString());
    }

    @Test
    void refusesWhatThisVersionDoesNotHave() {
        assertRefused("instrument.kind", LEAST.replace("[calibration]", "kind = \"modbus\"\n[calibration]"));
        assertRefused("instrument.kind", LEAST.replace("[calibration]", "kind = \"text\"\n[calibration]"));
        assertRefused("publish", LEAST + "[publish.mqtt]\nurl = \"ssl://broker.example:8883\"\n");
        assertRefused("publish", LEAST + "[publish.influx]\nurl = \"http://127.0.0.1:8086\"\n");
    }

    private static void assertRefused(String key, String toml) {
        List<Problem> problems = problems(toml);
        assertEquals(List.of(key), problems.stream().map(Problem::key).toList());
        assertTrue(problems.get(0).found().contains("this version"), problems.get(0)::found);
    }

    @Test
    void refusesAStartTimeThatNoClockWouldUse() {
        List<Problem> problems =
                problems(LEAST.replace("[calibration]", "start_utc = 2026-05-04T07:00:00Z\n[calibration]"));

        assertEquals(
                List.of("instrument.start_utc"),
                problems.stream().map(Problem::key).toList());
    }

    @Test
    void wantsAReceiverWhereItsTimeIsAskedFor() throws ConfigException {
        String gps = LEAST.replace("[calibration]", "clock = \"gps\"\n[calibration]");

        assertEquals(List.of("gps"), problems(gps).stream().map(Problem::key).toList());
        LoggerConfig config = LoggerConfig.parse(FILE, gps + "[gps]\nport = \"gps\"\n");
        assertEquals(new ClockChoice.Gps(), config.clock());
        assertEquals(Optional.of(new GpsChoice("gps", 9_600)), config.gps());
    }

    @Test
    void refusesACalibrationSaidTwice() {
        List<Problem> problems = problems(LEAST + "file = \"calibration.toml\"\n");

        assertEquals(
                List.of("calibration.file"), problems.stream().map(Problem::key).toList());
    }

    @Test
    void saysWhichSectionsAreMissing() {
        List<Problem> problems = problems("schema = 1\nrig = \"rig.toml\"\nrecordings = \"r\"\n");

        assertEquals(
                List.of("instrument", "calibration"),
                problems.stream().map(Problem::key).toList());
    }

    private static List<Problem> problems(String toml) {
        return assertThrows(ConfigException.class, () -> LoggerConfig.parse(FILE, toml))
                .problems();
    }
}
