package tautlog.logger.config;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.rig.Cell;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * All that a logger is told before it starts.
 *
 * @param rigToml the rig file's text, whole, as the recording keeps it
 * @param calibration from counts to the line's tension: what was written for the cell, divided by the part of the tension
 *     that the cell sees at its place
 */
public record Setup(LoggerConfig config, Rig rig, String rigToml, Calibration calibration) {

    /**
     * Reads the configuration and the files that it names.
     *
     * @throws ConfigException with the problems of all of them
     */
    public static Setup load(Path file) throws ConfigException {
        Loading loading = new Loading();
        LoggerConfig config = LoggerConfig.parse(file, loading.mustRead(file));
        Optional<String> rigToml = loading.read(config.rig());
        Optional<Rig> rig = rigToml.flatMap(
                toml -> loading.parsed(() -> Rig.parse(config.rig().toString(), toml)));
        Optional<Calibration> calibration = loading.calibration(config.calibration());
        loading.throwIfAny();
        return new Setup(
                config,
                rig.orElseThrow(),
                rigToml.orElseThrow(),
                ofTheLine(calibration.orElseThrow(), rig.orElseThrow()));
    }

    private static Calibration ofTheLine(Calibration ofTheCell, Rig rig) {
        BigDecimal readingPerTension = rig.cell().map(Cell::readingPerTension).orElse(BigDecimal.ONE);
        if (readingPerTension.compareTo(BigDecimal.ONE) == 0) {
            return ofTheCell;
        }
        return new Calibration(
                ofTheCell.zeroCounts(), ofTheCell.newtonsPerCount().divide(readingPerTension, MathContext.DECIMAL128));
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

        Optional<Calibration> calibration(CalibrationChoice choice) {
            if (choice instanceof CalibrationChoice.InFile inFile) {
                return read(inFile.file()).flatMap(toml -> parsed(() -> CalibrationFile.parse(inFile.file(), toml)));
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
