package tautlog.logger.config;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.logger.port.SerialSetting;
import tautlog.sample.Calibration;

/**
 * A logger's configuration, complete.
 *
 * @param rig the rig's file
 * @param recordings folder of the recordings
 * @param keep what may go when the recordings' disk is nearly full
 * @param line the instrument's port, as the system names it, or a path that began at the file's folder
 * @param instrument what stands at the port
 * @param shaft a source of the shaft's pulses on another port
 * @param publish where seconds and findings are published
 * @param drive where the system mounts a USB drive that is to get the recordings
 */
public record LoggerConfig(
        Path rig,
        Path recordings,
        KeepChoice keep,
        SerialSetting line,
        InstrumentChoice instrument,
        Optional<ShaftChoice> shaft,
        ClockChoice clock,
        CalibrationChoice calibration,
        ZeroChoice zero,
        Optional<GpsChoice> gps,
        PublishChoice publish,
        Optional<Path> drive) {
    private static final int SCHEMA = 1;
    /** Chosen: what most receivers on a serial line send with; NMEA 0183 itself says 4,800. */
    private static final int DEFAULT_GPS_BAUD = 9_600;

    private static final Range ANY_COUNT = Range.between("-8388608", "8388607"); // a converter of 24 bits

    private enum ClockWord {
        HOST,
        GPS,
        DEVICE
    }

    /** The instrument's port. */
    public String port() {
        return line.path();
    }

    /** Whether the instrument has a lamp that shows the beacon. */
    public boolean hasLamp() {
        return instrument instanceof InstrumentChoice.Framed;
    }

    /** Whether only the instrument's ticks tell the time: it may be held up. */
    public boolean isReplayed() {
        return clock instanceof ClockChoice.Device;
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
        PublishChoice publish = PublishSection.read(root, path(file));
        KeepChoice keep = root.or("keep", Reading.oneOf(KeepChoice.class), KeepChoice.ALL);
        Optional<ConfigTable> instrumentTable = section(root, "instrument");
        Optional<InstrumentSection> section = instrumentTable.map(table -> new InstrumentSection(table, file));
        Optional<SerialSetting> line = section.flatMap(InstrumentSection::line);
        Optional<InstrumentChoice> instrument = section.flatMap(InstrumentSection::choice);
        Optional<ClockChoice> clock = instrumentTable.flatMap(table ->
                clock(table, section.filter(InstrumentSection::isFramed).isPresent()));
        Optional<ShaftChoice> shaft = root.table("shaft").flatMap(table -> InstrumentSection.shaft(table, file));
        boolean isFramed = section.isEmpty() || section.get().isFramed();
        Optional<CalibrationChoice> derived = instrument
                .flatMap(InstrumentChoice::scale)
                .map(scale -> new CalibrationChoice.Written(CellCalibration.written(scale.calibration())));
        Optional<ConfigTable> calibrated =
                isFramed || root.has("calibration") ? section(root, "calibration") : Optional.empty();
        Optional<CalibrationChoice> calibration =
                calibrated.isPresent() ? calibrated.flatMap(table -> calibration(table, file, derived)) : derived;
        ZeroChoice zero = calibrated
                .map(table -> table.or("zero", Reading.oneOf(ZeroChoice.class), ZeroChoice.FIXED))
                .orElse(ZeroChoice.FIXED);
        Optional<GpsChoice> gps = gps(root, clock, file);
        Optional<Path> drive = root.table("drive").flatMap(table -> table.required("path", path(file)));
        root.finish();
        problems.throwIfAny();
        return new LoggerConfig(
                rig.orElseThrow(),
                recordings.orElseThrow(),
                keep,
                line.orElseThrow(),
                instrument.orElseThrow(),
                shaft,
                clock.orElseThrow(),
                calibration.orElseThrow(),
                zero,
                gps,
                publish,
                drive);
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

    private static Optional<ClockChoice> clock(ConfigTable instrument, boolean hasTicks) {
        ClockWord word = instrument.or("clock", Reading.oneOf(ClockWord.class), ClockWord.HOST);
        if (word == ClockWord.DEVICE && !hasTicks) {
            instrument.has("start_utc");
            instrument.problem(
                    "clock", "this kind of instrument tells no ticks", "Take it out: the computer's clock is used.");
            return Optional.empty();
        }
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
            Optional<String> port = table.required("port", InstrumentSection.port(file));
            int baud = table.or("baud", Reading.whole(300, 4_000_000), DEFAULT_GPS_BAUD);
            return port.map(name -> new GpsChoice(name, baud));
        });
    }

    /** @param derived what holds when nothing is written; empty when something must be */
    private static Optional<CalibrationChoice> calibration(
            ConfigTable table, Path file, Optional<CalibrationChoice> derived) {
        boolean zero = table.has("zero_counts");
        boolean written = table.has("newtons_per_count") || zero;
        if (table.has("file")) {
            if (written) {
                table.problem("file", "stands beside the numbers themselves", "Write either the file or the numbers.");
            }
            return table.optional("file", path(file)).map(CalibrationChoice.InFile::new);
        }
        if (!written && derived.isPresent()) {
            return derived;
        }
        Optional<BigDecimal> zeroCounts = table.required("zero_counts", Reading.decimal(ANY_COUNT));
        Optional<BigDecimal> factor = table.required("newtons_per_count", Reading.decimal(Range.aboveZero()));
        return zeroCounts
                .flatMap(counts -> factor.map(newtons -> new Calibration(counts, newtons)))
                .map(CellCalibration::written)
                .map(CalibrationChoice.Written::new);
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
