package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;

/** The file that {@code --calibration} names. */
final class GivenCalibration {
    private GivenCalibration() {}

    static CellCalibration read(Path file) throws IOException, UsageException, ConfigException {
        String toml = TextFile.read("--calibration", file, "Give a calibration.toml, as tautlog calibrate writes it.");
        return CellCalibration.parse(file.toString(), toml);
    }
}
