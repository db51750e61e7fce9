package tautlog.rig;

import java.math.BigDecimal;
import java.util.Optional;
import tautlog.quantity.Angle;

/**
 * The line that runs over a fixed block.
 *
 * @param lineMultiple tension in it there / measured tension
 * @param betweenLines the angle between its two parts, 0 to 150 degrees; empty when the rig does not say: then taken as 0,
 *     the greatest load
 */
public record Turn(BigDecimal lineMultiple, Optional<Angle> betweenLines) {
    static final String NOT_WRITTEN = "No angle between the lines is written: taken as 0 degrees, the greatest load.";

    /** Load on the block or its strap / measured tension. */
    BigDecimal multiple() {
        return times(betweenLines.map(BlockFactor::of).orElse(BlockFactor.TWO));
    }

    /** The same if the angle were this one. */
    BigDecimal multiple(Angle angle) {
        return times(BlockFactor.of(angle));
    }

    private BigDecimal times(BigDecimal factor) {
        return factor.multiply(lineMultiple).round(Angle.DIGITS);
    }
}
