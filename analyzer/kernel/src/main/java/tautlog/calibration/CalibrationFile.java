package tautlog.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.sample.Calibration;

/**
 * Reads a {@code calibration.toml}.
 *
 * <pre>
 *   schema = 1
 *   zero_counts = 4000.0             either these two …
 *   newtons_per_count = 0.5
 *   b0_counts = 4000.0               … or counts = b0 + b1·F (+ b2·F²), F in newtons
 *   b1_counts_per_newton = 2.0
 *   b2_counts_per_newton2 = 1e-7
 *   calibrated_at = 2026-04-30T12:00:00Z
 *   shunt_step_counts = 61234.5
 *   [fit]
 *   residual_sd_counts = 3.1
 *   resolution_counts = 1.0          by how much the readings' counts step; absent: not known
 *   degrees_of_freedom = 18
 *   least_load_n = 0.0
 *   greatest_load_n = 40000.0
 *   reference_percent = 0.1          expanded uncertainty (k = 2) of the reference loads; optional
 *   directions = "both"               loads come to from below ("up"), from above ("down"), "both"; absent: not known
 *   [fit.covariance]                 of the coefficients: counts, newtons
 *   b0_b0 = 0.5                      … b0_b1, b1_b1; for a curve b0_b2, b1_b2, b2_b2 too
 * </pre>
 */
final class CalibrationFile {
    private static final Range ANY_COUNT = Range.between("-8388608", "8388607"); // a converter of 24 bits
    private static final Range ANY = Range.between("-1e300", "1e300");
    private static final String[][] STRAIGHT = {{"b0_b0", "b0_b1"}, {"b0_b1", "b1_b1"}};
    private static final String[][] CURVED = {
        {"b0_b0", "b0_b1", "b0_b2"}, {"b0_b1", "b1_b1", "b1_b2"}, {"b0_b2", "b1_b2", "b2_b2"}
    };

    private final String toml;
    private final Problems problems;
    private final ConfigTable root;

    CalibrationFile(String file, String toml) throws ConfigException {
        this.toml = toml;
        problems = new Problems(file);
        root = ConfigTable.parse(problems, toml);
    }

    CellCalibration read() throws ConfigException {
        root.or("schema", Reading.whole(1, 1), 1);
        boolean fitted = root.has("b0_counts") || root.has("b1_counts_per_newton");
        Optional<Calibration> response = fitted ? fitted() : written();
        Optional<Instant> at = root.optional("calibrated_at", Reading.instant()).map(OffsetDateTime::toInstant);
        Optional<BigDecimal> shunt = root.optional("shunt_step_counts", exact(ANY_COUNT));
        Optional<FitQuality> quality = root.table("fit").flatMap(this::quality);
        root.finish();
        problems.throwIfAny();
        return new CellCalibration(toml, response.orElseThrow(), quality, at, shunt);
    }

    private Optional<Calibration> written() {
        Optional<BigDecimal> zero = root.required("zero_counts", exact(ANY_COUNT));
        Optional<BigDecimal> factor = root.required("newtons_per_count", exact(Range.aboveZero()));
        return zero.flatMap(counts -> factor.map(newtons -> new Calibration(counts, newtons)));
    }

    private Optional<Calibration> fitted() {
        Optional<BigDecimal> b0 = root.required("b0_counts", exact(ANY_COUNT));
        Optional<BigDecimal> b1 = root.required("b1_counts_per_newton", exact(Range.aboveZero()));
        BigDecimal b2 = root.or("b2_counts_per_newton2", exact(ANY), BigDecimal.ZERO);
        return b0.flatMap(zero -> b1.map(slope -> new Calibration(
                zero, BigDecimal.ONE.divide(slope, MathContext.DECIMAL128), b2.divide(slope, MathContext.DECIMAL128))));
    }

    private Optional<FitQuality> quality(ConfigTable fit) {
        int before = fit.problemsSoFar();
        Optional<BigDecimal> sd = fit.required("residual_sd_counts", exact(Range.fromZero()));
        BigDecimal step = fit.or("resolution_counts", exact(Range.fromZero()), BigDecimal.ZERO);
        Optional<Integer> freedom = fit.required("degrees_of_freedom", Reading.whole(1, 1_000_000));
        Optional<BigDecimal> least = fit.required("least_load_n", exact(ANY));
        Optional<BigDecimal> greatest = fit.required("greatest_load_n", exact(ANY));
        Optional<BigDecimal> reference = fit.optional("reference_percent", exact(Range.fromZero()));
        Directions directions = fit.or("directions", Reading.oneOf(Directions.words()), Directions.UNKNOWN);
        List<Double> covariance = fit.requiredTable("covariance")
                .map(table -> covariance(table, root.has("b2_counts_per_newton2") ? CURVED : STRAIGHT))
                .orElse(List.of());
        if (fit.problemsSoFar() > before) {
            return Optional.empty();
        }
        return Optional.of(new FitQuality(
                sd.orElseThrow().doubleValue(),
                step.doubleValue(),
                freedom.orElseThrow(),
                covariance,
                least.orElseThrow().doubleValue(),
                greatest.orElseThrow().doubleValue(),
                reference
                        .map(percent -> OptionalDouble.of(percent.doubleValue()))
                        .orElse(OptionalDouble.empty()),
                directions));
    }

    private static List<Double> covariance(ConfigTable table, String[][] names) {
        List<Double> numbers = new ArrayList<>();
        for (String[] row : names) {
            for (String name : row) {
                table.required(name, exact(ANY)).ifPresent(number -> numbers.add(number.doubleValue()));
            }
        }
        return numbers;
    }

    /** A number, or the same in quotes when it has more digits than a TOML number keeps. */
    private static Reading<BigDecimal> exact(Range range) {
        Reading<BigDecimal> plain = Reading.decimal(range);
        return new Reading<>(plain.allowed(), written -> {
            if (!(written instanceof String text)) {
                return plain.read(written);
            }
            try {
                BigDecimal number = new BigDecimal(text.strip());
                if (range.contains(number)) {
                    return number;
                }
            } catch (NumberFormatException notANumber) {
                throw new Refusal(Reading.show(text) + " is not a number", "Write " + plain.allowed() + ".");
            }
            throw new Refusal(Reading.show(text) + " is out of range", "Allowed: " + range + ".");
        });
    }
}
