package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;
import tautlog.sample.Calibration;

/**
 * From the load cell's own calibration to that of the line's tension: a cell at a fairlead or a block carries
 * 2 cos(a/2) times the tension, so its newtons per count are divided by that (and the curvature multiplied).
 *
 * <p>Recordings keep the cell's own calibration and the rig. Who turns counts into tension, the logger live and the desk
 * later, does it by this class, once, so that they agree to the count.
 */
public final class LineCalibration {
    private LineCalibration() {}

    /** The cell's calibration itself where the cell carries the tension once; else to 34 digits. */
    public static Calibration of(Calibration cell, Rig rig) {
        BigDecimal reading = rig.cell().map(Cell::readingPerTension).orElse(BigDecimal.ONE);
        return reading.compareTo(BigDecimal.ONE) == 0
                ? cell
                : new Calibration(
                        cell.zeroCounts(),
                        cell.newtonsPerCount().divide(reading, Angle.DIGITS),
                        cell.curvature().multiply(reading, Angle.DIGITS));
    }
}
