package tautlog.desk.pyramid;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroShift;

/**
 * What counts and ticks of an outing mean to who looks: newtons under a calibration, microseconds on an axis.
 *
 * @param ofTheDay the line's or the cell's calibration that the zeros were found with
 * @param now the calibration of the line's tension to read with
 */
public record Scale(Instrument instrument, Calibration ofTheDay, Calibration now, Axis axis) {
    /** From an outing's ticks to microseconds; never falls. */
    public interface Axis {
        long micros(long tick);
    }

    /** Counts to newtons under one zero; rises with the count. */
    final class Under {
        private final Curve curve = now.curve();
        private final int shift;

        private Under(Stretch stretch) {
            shift = stretch.isZeroTold
                    ? ofTheDay.zeroCounts()
                            .subtract(now.zeroCounts())
                            .add(BigDecimal.valueOf(stretch.zeroShift))
                            .setScale(0, RoundingMode.HALF_UP)
                            .intValueExact()
                    : 0;
        }

        double newtons(int count) {
            return curve.newtons(ZeroShift.shifted(instrument, count, shift));
        }
    }

    Under under(Stretch stretch) {
        return new Under(stretch);
    }
}
