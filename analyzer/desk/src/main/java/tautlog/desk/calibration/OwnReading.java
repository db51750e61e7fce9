package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Looks for loads that nobody weighed: the instrument's own display, written down as the reference. Such a calibration only
 * confirms the one that the display was made with, right or wrong.
 */
final class OwnReading {
    /**
     * Real cells repeat no better than this share of full scale: 0.025 % is the limit of ISO 376, class 00, for the best force
     * standards (from memory).
     */
    private static final double BELIEVABLE = 0.000_25;
    /** Chosen: with fewer loads agreement proves nothing. */
    private static final int LEAST_LOADS = 4;

    private final LoadReadings all;
    private final List<LoadStep> steps;

    OwnReading(LoadReadings all, List<LoadStep> steps) {
        this.all = all;
        this.steps = steps;
    }

    /** Why the loads look like the instrument's own reading; empty when they do not. */
    Optional<String> suspicion(Shape line) {
        if (steps.size() < LEAST_LOADS) {
            return Optional.empty();
        }
        if (sameDigits()) {
            return Optional.of("The counts are the loads digit by digit, though the loads are no round numbers");
        }
        double rounding = all.countStep().doubleValue() / 2
                + all.loadStepNewtons().doubleValue()
                        / 2
                        * Math.abs(line.fit().coefficients().get(1));
        double span =
                Math.abs(steps.get(steps.size() - 1).meanCounts() - steps.get(0).meanCounts());
        // a hair more, for the fit itself bends to the roundings
        boolean within = line.greatestResidual() <= rounding * 1.05;
        return within && rounding < BELIEVABLE * span
                ? Optional.of("No reading lies further from a straight line than the rounding of its own digits ("
                        + Digits.three(rounding) + " counts in " + Digits.three(span)
                        + "), closer than real cells repeat")
                : Optional.empty();
    }

    private boolean sameDigits() {
        boolean same = all.readings().stream()
                .allMatch(reading -> digits(number(reading)).equals(digits(reading.counts())));
        boolean round = all.readings().stream()
                .allMatch(reading -> number(reading).stripTrailingZeros().precision() <= 2);
        return same && !round;
    }

    /** The load as written, without its unit. */
    private static BigDecimal number(LoadReading reading) {
        return new BigDecimal(reading.written().substring(0, reading.written().indexOf(' ')));
    }

    private static String digits(BigDecimal number) {
        return number.stripTrailingZeros().unscaledValue().toString();
    }
}
