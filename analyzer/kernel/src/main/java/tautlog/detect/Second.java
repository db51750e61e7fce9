package tautlog.detect;

import java.math.BigInteger;
import java.util.OptionalDouble;

/**
 * The one-second summary. Second k holds the samples of the outing from k to k + 1 s after its first, by number; a second
 * without a sample gives none.
 *
 * @param index k
 * @param least least count
 * @param greatest greatest count
 * @param countSum over its {@code samples} samples
 * @param shaftRpm mean of its shaft readings, to the tenth; what was stored before that has all digits
 * @param share greatest tension / limit
 * @param flags {@link #GAP} and the others, or-ed
 * @param countSquares sum of the squares of its counts under a curved calibration, whose mean needs it; 0 under a straight line
 */
public record Second(
        long index,
        long firstNumber,
        int least,
        int greatest,
        long countSum,
        int samples,
        OptionalDouble shaftRpm,
        String hookup,
        double share,
        int flags,
        BigInteger countSquares) {
    /** Under a straight line. */
    public Second(
            long index,
            long firstNumber,
            int least,
            int greatest,
            long countSum,
            int samples,
            OptionalDouble shaftRpm,
            String hookup,
            double share,
            int flags) {
        this(index, firstNumber, least, greatest, countSum, samples, shaftRpm, hookup, share, flags, BigInteger.ZERO);
    }

    /** A sample number of this second is missing. */
    public static final int GAP = 1;
    /** A sample was at the converter's end stop. */
    public static final int END_STOP = 2;
    /** A frame said that the bridge is open or shorted. */
    public static final int OPEN_BRIDGE = 4;
    /** A sample was above the limit. */
    public static final int OVER_LIMIT = 8;
    /** The limit is only an upper bound. */
    public static final int AT_MOST = 16;

    /**
     * The same with its speed to 0.1 rpm, ⌊10 · m + 0.5⌋ / 10: as the detectors tell it. Recordings older than that hold the mean itself.
     * Chosen: a tenth is about what a pulse's jitter makes, and takes a byte where the mean takes eight.
     */
    public Second inTenths() {
        OptionalDouble tenths =
                shaftRpm.isEmpty() ? shaftRpm : OptionalDouble.of(Math.floor(10 * shaftRpm.orElseThrow() + 0.5) / 10);
        return new Second(
                index, firstNumber, least, greatest, countSum, samples, tenths, hookup, share, flags, countSquares);
    }
}
