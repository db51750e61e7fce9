package tautlog.rig;

import java.math.BigDecimal;
import java.util.Optional;
import tautlog.quantity.Angle;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * From the load cell's own calibration to that of the line's tension: a cell at a fairlead or a block carries
 * 2 cos(a/2) times the tension, so its newtons per count are divided by that (and the curvature multiplied).
 *
 * <p>Recordings keep the cell's own calibration and the rig. Who turns counts into tension, the logger live and the desk
 * later, does it by this class, once, so that they agree to the count.
 */
public final class LineCalibration {
    private LineCalibration() {}

    /**
     * Why a line's calibration cannot be used with this instrument under this rig, whole sentences; empty when it can.
     *
     * <p>A curve must rise over all readings that count as measured: to the converter's end stop or the cell's capacity, if the rig
     * gives it, whichever comes first, and as far below zero.
     */
    public static Optional<String> misfit(Calibration line, Instrument instrument, Rig rig) {
        long greatest = instrument.fullScale();
        long least = -greatest - 1;
        if (rig.cellCapacityNewtons().isPresent()) {
            BigDecimal capacity = rig.cellCapacityNewtons().get();
            greatest = Math.min(greatest, line.greatestCountsAtOrBelow(capacity));
            least = Math.max(least, line.leastCountsAtOrAbove(capacity.negate()));
        }
        boolean bendsDown = line.topCounts() <= greatest;
        if (!bendsDown && line.bottomCounts() < least) {
            return Optional.empty();
        }
        return Optional.of("the calibration's curve stops rising at "
                + (bendsDown ? line.topCounts() : line.bottomCounts()) + " counts, within the " + least + " to "
                + greatest
                + " counts that the cell and the converter can give: beyond that nothing is known of the tension."
                + " Write the cell's capacity into the rig, calibrate with loads over the whole range that is used, or take a"
                + " straight line.");
    }

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

    /**
     * The count from which on a reading is only a lower bound: the converter's end stop, beyond the cell's own rating, or the
     * top of a curve.
     */
    public static int atLeastFrom(Calibration line, Instrument instrument, Rig rig) {
        long beyondCell = rig.cellCapacityNewtons()
                .map(capacity -> line.greatestCountsAtOrBelow(capacity) + 1L)
                .orElse(Long.MAX_VALUE);
        return (int) Math.min(instrument.fullScale(), Math.min(beyondCell, line.topCounts()));
    }
}
