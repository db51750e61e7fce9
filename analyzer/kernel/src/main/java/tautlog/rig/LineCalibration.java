package tautlog.rig;

import java.math.BigDecimal;
import tautlog.quantity.Angle;
import tautlog.sample.Calibration;

/**
 * From the load cell's own calibration to that of the line's tension: a cell at a fairlead or a block carries
 * 2 cos(a/2) times the tension, so its newtons per count are divided by that.
 */
public final class LineCalibration {
    private LineCalibration() {}

    /** The cell's calibration itself where the cell carries the tension once; else to 34 digits. */
    public static Calibration of(Calibration cell, Rig rig) {
        BigDecimal reading = rig.cell().map(Cell::readingPerTension).orElse(BigDecimal.ONE);
        return reading.compareTo(BigDecimal.ONE) == 0
                ? cell
                : new Calibration(cell.zeroCounts(), cell.newtonsPerCount().divide(reading, Angle.DIGITS));
    }
}
