package tautlog.logger.instrument.modbus;

import tautlog.logger.instrument.modbus.RegisterValue.Telling;

/**
 * Whether readings are to be believed though the order of their bytes is proven: the device may have been exchanged or set anew
 * since. At first, and after a value that no load cell gives, not before ten in a row were possible ones that another order
 * would read as other values.
 *
 * <p>A swapped order makes most floats absurd, but some look possible by chance: of random ones about an eighth does, so that
 * ten in a row are one chance in a thousand million. Whole numbers of a nearly slack line, or a line that stands still, are
 * not found out so; only the proof does that.
 *
 * <p>A value that is the same in every order, zero above all, earns nothing. Up to the first absurd one it is taken: it is
 * right in any order.
 */
final class Trust {
    /** Chosen; see above. */
    static final int POSSIBLE_ONES = 10;

    private int inARow;
    private boolean wasAbsurd;

    /** A possible value came; whether to take it. */
    boolean afterPossible(Telling telling) {
        if (inARow >= POSSIBLE_ONES) {
            return true;
        }
        if (telling == Telling.TELLS) {
            inARow++;
        }
        return telling == Telling.ALIKE && !wasAbsurd;
    }

    void afterAbsurd() {
        inARow = 0;
        wasAbsurd = true;
    }
}
