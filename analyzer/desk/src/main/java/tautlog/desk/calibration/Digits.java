package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** How the small figures of a calibration look: by digits that count, never with an exponent that a person must read. */
final class Digits {
    private static final BigDecimal LEAST_PLAIN = new BigDecimal("1e-6");

    private Digits() {}

    /** Three digits that count: {@code 0.885}, {@code 673}, {@code 185000000}. */
    static String three(double value) {
        return rounded(value, 3);
    }

    /** Five: {@code 672.66}. */
    static String five(double value) {
        return rounded(value, 5);
    }

    /** Seven: {@code 4000.523}. */
    static String seven(double value) {
        return rounded(value, 7);
    }

    /** With a sign always, three digits. */
    static String signed(double value) {
        return (value > 0 ? "+" : "") + three(value);
    }

    private static String rounded(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        BigDecimal bare = rounded.stripTrailingZeros();
        return bare.abs().compareTo(LEAST_PLAIN) < 0 ? bare.toString() : bare.toPlainString();
    }

    /** A share in percent of full scale: {@code 0.031 %}. */
    static String percent(double share) {
        return three(Math.abs(share) * 100) + " %";
    }
}
