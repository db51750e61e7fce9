package tautlog.logger.config;

import java.nio.file.Path;
import tautlog.calibration.CellCalibration;

/** Where the calibration stands. */
public sealed interface CalibrationChoice {
    /** In {@code logger.toml} itself. */
    record Written(CellCalibration calibration) implements CalibrationChoice {}

    /** In a file of its own. */
    record InFile(Path file) implements CalibrationChoice {}
}
