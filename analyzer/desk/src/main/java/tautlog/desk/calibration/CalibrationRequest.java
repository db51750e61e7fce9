package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import tautlog.rig.Rig;

/**
 * What is asked of a calibration beside the readings.
 *
 * @param degree 1 or 2; empty for the lowest that is good enough
 * @param referencePercent expanded uncertainty (k = 2) of the reference loads in percent of them
 * @param shuntStepCounts instead of what the readings say
 * @param at when the readings were taken, instead of what they say
 * @param rig whose full pull the loads should reach
 */
public record CalibrationRequest(
        OptionalInt degree,
        Optional<BigDecimal> referencePercent,
        Optional<BigDecimal> shuntStepCounts,
        Optional<Instant> at,
        Optional<Rig> rig) {
    /** The lowest degree that is good enough, nothing else known. */
    public static final CalibrationRequest PLAIN = new CalibrationRequest(
            OptionalInt.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
