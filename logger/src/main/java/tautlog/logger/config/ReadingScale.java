package tautlog.logger.config;

import java.math.BigDecimal;
import tautlog.quantity.ForceUnit;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * What the readings of an instrument are that sends numbers of its own: one count is one step of the last digit.
 *
 * @param name of the instrument, up to 8 ASCII characters
 * @param decimals digits behind the point, 0 to 6
 * @param rateMillihertz nominal rate, 1,000 to 4,000,000 thousandths of a hertz
 * @param fullScaleCounts the greatest reading, as a count: a reading beyond it is none
 */
public record ReadingScale(String name, ForceUnit unit, int decimals, long rateMillihertz, int fullScaleCounts) {
    /** Ticks a second: microseconds of this computer's clock that never goes back. */
    public static final long TICK_HZ = 1_000_000;

    /** From counts to newtons: the exact size of the last digit. */
    public Calibration calibration() {
        return new Calibration(BigDecimal.ZERO, unit.newtons().movePointLeft(decimals));
    }

    /**
     * The instrument as a recording knows it.
     *
     * @param boot another at each start; 32 bit
     */
    public Instrument instrument(long boot) {
        return new Instrument(name, 0, 0, boot, TICK_HZ, rateMillihertz, fullScaleCounts, 0);
    }
}
