package tautlog.logger.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * One logger on one winch: all that it is told before it starts.
 *
 * @param rigToml the rig file's text, whole, as the recording keeps it
 * @param cellCalibration from counts to the load cell's own force, as written; the recording keeps this one
 */
public record Installation(LoggerConfig config, Rig rig, String rigToml, CellCalibration cellCalibration) {

    /**
     * From counts to the line's tension, for detectors, beacon and screens: the cell's own calibration with its place taken
     * into account. It is derived from what the recording keeps, live as at the desk, so that the place counts once.
     */
    public Calibration lineCalibration() {
        return LineCalibration.of(cellCalibration.response(), rig);
    }

    /**
     * Reads the configuration and the files that it names.
     *
     * @throws ConfigException with the problems of all of them
     */
    public static Installation load(Path file) throws ConfigException {
        Loading loading = new Loading();
        LoggerConfig config = LoggerConfig.parse(file, loading.mustRead(file));
        Optional<String> rigToml = loading.read(config.rig());
        Optional<Rig> rig = rigToml.flatMap(
                toml -> loading.parsed(() -> Rig.parse(config.rig().toString(), toml)));
        Optional<CellCalibration> calibration = loading.calibration(config.calibration());
        loading.throwIfAny();
        return new Installation(config, rig.orElseThrow(), rigToml.orElseThrow(), calibration.orElseThrow());
    }

    /**
     * Reads each file that publishing needs once, so that what is wrong with it is said before anything starts.
     *
     * @throws ConfigException with what is wrong with each
     */
    public void requirePublishingFiles() throws ConfigException {
        List<Problem> problems = new ArrayList<>();
        config.publish().mqtt().ifPresent(mqtt -> {
            mqtt.password().ifPresent(file -> check(file, "publish.mqtt.password_file", problems));
            mqtt.caFile().ifPresent(file -> check(file, "publish.mqtt.ca_file", problems));
        });
        config.publish().influx().ifPresent(influx -> {
            influx.token().ifPresent(file -> check(file, "publish.influx.token_file", problems));
            influx.caFile().ifPresent(file -> check(file, "publish.influx.ca_file", problems));
        });
        if (!problems.isEmpty()) {
            throw new ConfigException(problems);
        }
    }

    private static void check(SecretFile file, String key, List<Problem> problems) {
        try {
            file.read();
        } catch (IOException unusable) {
            problems.add(new Problem(
                    file.path().toString(),
                    1,
                    key,
                    "this secret cannot be used",
                    String.valueOf(unusable.getMessage())));
        }
    }

    private static void check(Path file, String key, List<Problem> problems) {
        if (!Files.isReadable(file)) {
            problems.add(
                    new Problem(file.toString(), 1, key, "this file cannot be read", "Check its name and its rights."));
        }
    }

    /** Reads one file after the other and collects what is wrong with each. */
    private static final class Loading {
        private interface Parser<T> {
            T parse() throws ConfigException;
        }

        private final List<Problem> problems = new ArrayList<>();

        String mustRead(Path file) throws ConfigException {
            Optional<String> text = read(file);
            throwIfAny();
            return text.orElseThrow();
        }

        Optional<String> read(Path file) {
            try {
                return Optional.of(Files.readString(file));
            } catch (IOException unreadable) {
                String why = Files.exists(file) ? "cannot be read (" + unreadable + ")" : "is not there";
                problems.add(new Problem(file.toString(), 1, "", "this file " + why, "Check its name and its rights."));
                return Optional.empty();
            }
        }

        <T> Optional<T> parsed(Parser<T> parser) {
            try {
                return Optional.of(parser.parse());
            } catch (ConfigException wrong) {
                problems.addAll(wrong.problems());
                return Optional.empty();
            }
        }

        Optional<CellCalibration> calibration(CalibrationChoice choice) {
            if (choice instanceof CalibrationChoice.InFile inFile) {
                return read(inFile.file())
                        .flatMap(toml ->
                                parsed(() -> CellCalibration.parse(inFile.file().toString(), toml)));
            }
            return Optional.of(((CalibrationChoice.Written) choice).calibration());
        }

        void throwIfAny() throws ConfigException {
            if (!problems.isEmpty()) {
                throw new ConfigException(problems);
            }
        }
    }
}
