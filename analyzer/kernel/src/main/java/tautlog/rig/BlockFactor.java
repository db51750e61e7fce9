package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;

/**
 * Load on a block / tension in the line that runs over it: 2 cos(a/2), a the angle between the two lines (statics).
 *
 * <p>Friction of the sheave counts only where it makes a load greater: it takes nothing off any load here, and adds where
 * the tension is measured beyond a sheave and the winch must pull more than that ({@link #WINCH_SIDE}).
 */
final class BlockFactor {
    static final BigDecimal TWO = BigDecimal.valueOf(2);
    /** Beyond it a small error of the angle is a large one of the load. */
    static final String GREATEST_ANGLE = "150";

    /** What a sheave passes on; common practice for rolling bearings, sources give 0.90 to 0.98. */
    private static final BigDecimal PASSED_ON = new BigDecimal("0.96");
    /** Tension on the winch's side of a sheave / tension beyond it. */
    static final BigDecimal WINCH_SIDE = BigDecimal.ONE.divide(PASSED_ON, Angle.DIGITS);

    private BlockFactor() {}

    /** 2 cos(a/2) to 34 digits; exactly 2 for parallel lines. */
    static BigDecimal of(Angle betweenLines) {
        return betweenLines.half().cosine().multiply(TWO).round(Angle.DIGITS);
    }
}
