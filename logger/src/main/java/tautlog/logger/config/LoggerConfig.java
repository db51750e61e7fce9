package tautlog.logger.config;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.sample.Calibration;

/**
 * A logger's configuration, complete.
 *
 * @param rig the rig's file
 * @param recordings folder of the recordings
 * @param port of the instrument, as the system names it, or a path that began at the file's folder
 * @param baud bits per second
 */
public record LoggerConfig(
        Path rig,
        Path recordings,
        String port,
        int baud,
        ClockChoice clock,
        CalibrationChoice calibration,
        ZeroChoice zero,
        Optional<GpsChoice> gps) {
    private static final int SCHEMA = 1;
    private static final int DEFAULT_BAUD = 115_200;
    /** Chosen: what most receivers on a serial line send with; NMEA 0183 itself says 4,800. */
    private static final int DEFAULT_GPS_BAUD = 9_600;

    private static final Range ANY_COUNT = Range.between("-8388608", "8388607"); // a converter of 24 bits

    private enum ClockWord {
        HOST,
        GPS,
        DEVICE
    }

    /**
     * Reads the text of a {@code logger.toml}.
     *
     * @param file its path: messages name it, and paths in the text start from its folder
     * @throws ConfigException with every problem of the text
     */
    public static LoggerConfig parse(Path file, String toml) throws ConfigException {
        Problems problems = new Problems(file.toString());
        ConfigTable root = ConfigTable.parse(problems, toml);
        requireSchema(root);
        Optional<Path> rig = root.required("rig", path(file));
        Optional<Path> recordings = root.required("recordings", path(file));
        refusePublishing(root);
        Optional<ConfigTable> instrument = section(root, "instrument");
        Optional<String> port = instrument.flatMap(table -> table.required("port", port(file)));
        Optional<Integer> baud = instrument.map(table -> table.or("baud", Reading.whole(300, 4_000_000), DEFAULT_BAUD));
        instrument.ifPresent(table -> table.or("kind", framed(), "framed"));
        Optional<ClockChoice> clock = instrument.flatMap(LoggerConfig::clock);
        Optional<GpsChoice> gps = gps(root, clock, file);
        Optional<ConfigTable> calibrated = section(root, "calibration");
        Optional<CalibrationChoice> calibration = calibrated.flatMap(table -> calibration(table, file));
        Optional<ZeroChoice> zero =
                calibrated.map(table -> table.or("zero", Reading.oneOf(ZeroChoice.class), ZeroChoice.FIXED));
        root.finish();
        problems.throwIfAny();
        return new LoggerConfig(
                rig.orElseThrow(),
                recordings.orElseThrow(),
                port.orElseThrow(),
                baud.orElseThrow(),
                clock.orElseThrow(),
                calibration.orElseThrow(),
                zero.orElseThrow(),
                gps);
    }

    static void requireSchema(ConfigTable root) {
        root.required("schema", new Reading<>("the whole number 1", written -> {
            if (written instanceof Long schema && schema == SCHEMA) {
                return SCHEMA;
            }
            throw new Refusal(
                    Reading.show(written) + " is no schema of this version",
                    "Allowed: 1. A greater one belongs to a newer tautlogd: install that.");
        }));
    }

    private static Optional<ConfigTable> section(ConfigTable root, String key) {
        if (!root.has(key)) {
            root.problem(key, "is missing", "Write [" + key + "] and its keys below.");
        }
        return root.table(key);
    }

    private static void refusePublishing(ConfigTable root) {
        if (root.has("publish")) {
            root.problem(
                    "publish",
                    "this version of tautlogd does not publish",
                    "It only records. Take [publish.mqtt] and [publish.influx] out until a version can.");
        }
    }

    private static Optional<ClockChoice> clock(ConfigTable instrument) {
        ClockWord word = instrument.or("clock", Reading.oneOf(ClockWord.class), ClockWord.HOST);
        if (word != ClockWord.DEVICE) {
            if (instrument.has("start_utc")) {
                instrument.problem(
                        "start_utc",
                        "is only for clock = \"device\"",
                        "Take it out, or write clock = \"device\" when the times shall come from the instrument's ticks.");
            }
            return Optional.of(word == ClockWord.GPS ? new ClockChoice.Gps() : new ClockChoice.Host());
        }
        Optional<Instant> start =
                instrument.required("start_utc", Reading.instant()).map(OffsetDateTime::toInstant);
        return start.map(ClockChoice.Device::new);
    }

    private static Optional<GpsChoice> gps(ConfigTable root, Optional<ClockChoice> clock, Path file) {
        if (!root.has("gps")) {
            if (clock.filter(ClockChoice.Gps.class::isInstance).isPresent()) {
                root.problem("gps", "is missing, but clock = \"gps\"", "Write [gps] and its port below.");
            }
            return Optional.empty();
        }
        return root.table("gps").flatMap(table -> {
            Optional<String> port = table.required("port", port(file));
            int baud = table.or("baud", Reading.whole(300, 4_000_000), DEFAULT_GPS_BAUD);
            return port.map(name -> new GpsChoice(name, baud));
        });
    }

    private static Optional<CalibrationChoice> calibration(ConfigTable table, Path file) {
        boolean zero = table.has("zero_counts");
        boolean written = table.has("newtons_per_count") || zero;
        if (table.has("file")) {
            if (written) {
                table.problem("file", "stands beside the numbers themselves", "Write either the file or the numbers.");
            }
            return table.optional("file", path(file)).map(CalibrationChoice.InFile::new);
        }
        Optional<BigDecimal> zeroCounts = table.required("zero_counts", Reading.decimal(ANY_COUNT));
        Optional<BigDecimal> factor = table.required("newtons_per_count", Reading.decimal(Range.aboveZero()));
        return zeroCounts
                .flatMap(counts -> factor.map(newtons -> new Calibration(counts, newtons)))
                .map(CellCalibration::written)
                .map(CalibrationChoice.Written::new);
    }

    private static Reading<String> framed() {
        return inThisVersion(
                "framed", List.of("text", "modbus"), "An instrument that speaks the framed wire format is needed.");
    }

    /** A word of which this version knows only one; the others are designed but not built. */
    private static Reading<String> inThisVersion(String only, List<String> later, String meaning) {
        Reading<String> known = Reading.oneOf(Map.of(only, only));
        return new Reading<>(known.allowed(), written -> {
            if (later.contains(written)) {
                throw new Refusal(
                        Reading.show(written) + " is not in this version of tautlogd",
                        "Allowed: \"" + only + "\". " + meaning);
            }
            if (only.equals(written)) {
                return only;
            }
            throw new Refusal(Reading.show(written) + " is not known here", "Allowed: \"" + only + "\".");
        });
    }

    /** A bare name is the system's; one with a slash that is no absolute path starts from the file's folder. */
    private static Reading<String> port(Path file) {
        return new Reading<>("the port's name (\"/dev/ttyACM0\")", written -> {
            if (written instanceof String text && !text.isBlank() && text.indexOf('\0') < 0) {
                return text.contains("/")
                        ? file.toAbsolutePath().resolveSibling(text).normalize().toString()
                        : text;
            }
            throw new Refusal(
                    Reading.show(written) + " is not a port's name",
                    "Write it in quotes: \"/dev/ttyACM0\". `tautlogd ports` lists those there are.");
        });
    }

    private static Reading<Path> path(Path file) {
        return new Reading<>("a path in quotes", written -> {
            if (written instanceof String text && !text.isBlank() && text.indexOf('\0') < 0) {
                return file.toAbsolutePath().resolveSibling(text).normalize();
            }
            throw new Refusal(Reading.show(written) + " is not a path", "Write it in quotes, from this file's folder.");
        });
    }
}
