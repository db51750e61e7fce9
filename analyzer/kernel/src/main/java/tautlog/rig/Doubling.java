package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;

/**
 * Whether a moving block doubles the line, and what that makes of the loads.
 *
 * <pre>
 *   winch ══(fixed block)══╗ T, or T / 0.96 for each sheave from here to the dead end when T is measured there
 *                        (moving block)── what hangs behind it: the sum of both parts
 *   dead end ══════════════╝ T
 * </pre>
 *
 * @param isThere a moving block is in the hookup
 * @param isBefore it is listed before the item in question
 * @param cellAtDeadEnd the tension is measured at the dead end, beyond the block's sheave
 * @param fixedBlocks how many fixed blocks are listed before it: the winch's part runs over each of them
 */
record Doubling(boolean isThere, boolean isBefore, boolean cellAtDeadEnd, int fixedBlocks) {
    /**
     * Tension in the winch's part of the line / measured tension: greater than 1 when sheaves hide some of it. Between the
     * fixed blocks it is a little less; the part nearest to the winch counts for all.
     */
    BigDecimal winchSide() {
        return isThere && cellAtDeadEnd ? BlockFactor.WINCH_SIDE.pow(1 + fixedBlocks, Angle.DIGITS) : BigDecimal.ONE;
    }

    /** Load on the moving block, its strap and what hangs behind it / measured tension. */
    BigDecimal behind() {
        BigDecimal otherPart = isThere && cellAtDeadEnd ? BlockFactor.WINCH_SIDE : BigDecimal.ONE;
        return otherPart.add(BigDecimal.ONE).round(Angle.DIGITS);
    }

    /** Tension in the line where the item in question is / measured tension. */
    BigDecimal here() {
        return isBefore ? behind() : winchSide();
    }
}
