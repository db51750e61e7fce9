package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;

/**
 * Whether a moving block doubles the line, and what that makes of the loads.
 *
 * <pre>
 *   winch ════════════╗ winch's part: T, or T / 0.96 when T is measured at the dead end
 *                   (block)── what hangs behind it: the sum of both parts
 *   dead end ═════════╝ T
 * </pre>
 *
 * @param isThere a moving block is in the hookup
 * @param isBefore it is listed before the item in question
 * @param cellAtDeadEnd the tension is measured at the dead end, beyond the block's sheave
 */
record Doubling(boolean isThere, boolean isBefore, boolean cellAtDeadEnd) {
    /** Tension in the winch's part of the line / measured tension: greater than 1 when the sheave hides some of it. */
    BigDecimal winchSide() {
        return isThere && cellAtDeadEnd ? BlockFactor.WINCH_SIDE : BigDecimal.ONE;
    }

    /** Load on the moving block, its strap and what hangs behind it / measured tension. */
    BigDecimal behind() {
        return winchSide().add(BigDecimal.ONE).round(Angle.DIGITS);
    }
}
