package tautlog.desk.plot;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** The upright axis of a drawing: values from {@code least} to {@code greatest} over {@code height} pixels. */
final class Scale {
    private final double least;
    private final double greatest;
    private final int top;
    private final int height;

    /** A little room is left above {@code greatest}; a span of nothing becomes a span of one. */
    Scale(double least, double greatest, int top, int height) {
        this.least = least;
        this.greatest = greatest > least ? greatest + (greatest - least) * 0.08 : least + 1;
        this.top = top;
        this.height = height;
    }

    /** Pixels from the drawing's upper edge. */
    double y(double value) {
        return top + height * (greatest - value) / (greatest - least);
    }

    /** At most {@code most} + 1 round values. */
    List<Double> ticks(int most) {
        double step = step(most);
        List<Double> ticks = new ArrayList<>();
        for (long k = (long) Math.ceil(least / step); k * step <= greatest; k++) {
            ticks.add(k * step);
        }
        return ticks;
    }

    private double step(int most) {
        double rough = (greatest - least) / most;
        double decade = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double factor : new double[] {1, 2, 5}) {
            if (decade * factor >= rough) {
                return decade * factor;
            }
        }
        return decade * 10;
    }

    String label(double value) {
        return BigDecimal.valueOf(value)
                .round(new java.math.MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }
}
