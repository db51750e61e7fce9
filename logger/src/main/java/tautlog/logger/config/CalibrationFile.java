package tautlog.logger.config;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.sample.Calibration;

/** The two numbers of a calibration, in a file of their own or in {@code logger.toml}. */
final class CalibrationFile {
    private static final Range ANY_COUNT = Range.between("-8388608", "8388607"); // a converter of 24 bits

    private CalibrationFile() {}

    /**
     * Reads the text of a calibration file: {@code zero_counts} and {@code newtons_per_count} at the top.
     *
     * @throws ConfigException with every problem of the text
     */
    static Calibration parse(Path file, String toml) throws ConfigException {
        Problems problems = new Problems(file.toString());
        ConfigTable root = ConfigTable.parse(problems, toml);
        if (root.has("schema")) {
            LoggerConfig.requireSchema(root);
        }
        Optional<Calibration> calibration = numbers(root);
        root.finish();
        problems.throwIfAny();
        return calibration.orElseThrow();
    }

    static Optional<Calibration> numbers(ConfigTable table) {
        Optional<BigDecimal> zero = table.required("zero_counts", Reading.decimal(ANY_COUNT));
        Optional<BigDecimal> factor = table.required("newtons_per_count", Reading.decimal(Range.aboveZero()));
        return zero.flatMap(counts -> factor.map(newtons -> new Calibration(counts, newtons)));
    }
}
