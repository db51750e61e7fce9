package tautlog.logger.instrument.modbus;

/**
 * Whether readings are to be believed: at first, and after a value that no load cell gives, not before ten in a row were
 * possible ones.
 *
 * <p>A swapped order of bytes or words makes most values absurd, but some look possible by chance: of random floats about
 * an eighth does, so that ten in a row are one chance in a thousand million. A line that stands still at such a value is not
 * found out; only a known load does that.
 */
final class Trust {
    /** Chosen; see above. */
    static final int POSSIBLE_ONES = 10;

    private int inARow;

    /** A possible value came; whether to take it. */
    boolean afterPossible() {
        if (inARow < POSSIBLE_ONES) {
            inARow++;
            return false;
        }
        return true;
    }

    void afterAbsurd() {
        inARow = 0;
    }
}
