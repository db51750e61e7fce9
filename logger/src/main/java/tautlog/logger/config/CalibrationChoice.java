package tautlog.logger.config;

import java.nio.file.Path;
import tautlog.sample.Calibration;

/** Where the calibration stands. */
public sealed interface CalibrationChoice {
    /** In {@code logger.toml} itself. */
    record Written(Calibration calibration) implements CalibrationChoice {}

    /** In a file of its own. */
    record InFile(Path file) implements CalibrationChoice {}
}
