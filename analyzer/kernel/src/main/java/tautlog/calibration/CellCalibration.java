package tautlog.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.sample.Calibration;

/**
 * A load cell's calibration: from counts to the cell's own force.
 *
 * @param toml the file's text, whole, as a recording keeps it
 * @param response from counts to newtons
 * @param quality how good the response is; empty when only its numbers were written
 * @param calibratedAt when the readings were taken
 * @param shuntStepCounts by how much the counts rose on that day when the shunt resistor was switched on
 */
public record CellCalibration(
        String toml,
        Calibration response,
        Optional<FitQuality> quality,
        Optional<Instant> calibratedAt,
        Optional<BigDecimal> shuntStepCounts) {

    /**
     * Reads the text of a {@code calibration.toml}: either {@code zero_counts} and {@code newtons_per_count}, or what {@code
     * tautlog calibrate} writes.
     *
     * @param file its name, for messages
     * @throws ConfigException with every problem of the text
     */
    public static CellCalibration parse(String file, String toml) throws ConfigException {
        return new CalibrationFile(file, toml).read();
    }

    /** The two numbers of a straight line of which nothing else is known. */
    public static CellCalibration written(Calibration line) {
        // in quotes: a decimal of TOML is a double, these are exact
        String toml = "schema = 1\nzero_counts = \"" + line.zeroCounts().toPlainString() + "\"\nnewtons_per_count = \""
                + line.newtonsPerCount().toPlainString() + "\"\n";
        return new CellCalibration(toml, line, Optional.empty(), Optional.empty(), Optional.empty());
    }
}
