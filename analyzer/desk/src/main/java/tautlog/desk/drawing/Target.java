package tautlog.desk.drawing;

import tautlog.desk.plot.Columns;

/**
 * A drawing that one outing contributes to.
 *
 * @param seconds where a tick of that outing stands on the drawing's axis
 */
record Target(Columns columns, Axis seconds) {
    /** From an outing's ticks to the seconds of a drawing. */
    interface Axis {
        double of(long tick);
    }
}
