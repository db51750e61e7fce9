package tautlog.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * An angle, from 0 to 180 degrees.
 *
 * @param degrees exact
 */
public record Angle(BigDecimal degrees) {
    /** Digits of every figure into which a cosine enters. */
    public static final MathContext DIGITS = MathContext.DECIMAL128;

    private static final BigDecimal HALF_TURN = new BigDecimal("180");
    private static final BigDecimal PI =
            new BigDecimal("3.14159265358979323846264338327950288419716939937510582097494459");
    /** Digits while it is worked out: 20 more than are given, so that the last one given is right. */
    private static final MathContext WORKING = new MathContext(55);

    /** @throws IllegalArgumentException if {@code degrees} is not from 0 to 180 */
    public Angle {
        if (degrees.signum() < 0 || degrees.compareTo(HALF_TURN) > 0) {
            throw new IllegalArgumentException("degrees must be from 0 to 180, was " + degrees);
        }
    }

    public Angle half() {
        return new Angle(degrees.divide(BigDecimal.valueOf(2)));
    }

    /** What is left to a half turn. */
    public Angle supplement() {
        return new Angle(HALF_TURN.subtract(degrees));
    }

    /** The cosine to {@link #DIGITS}; exactly 1 at 0 and exactly 0 at 90 degrees. */
    public BigDecimal cosine() {
        if (degrees.signum() == 0) {
            return BigDecimal.ONE;
        }
        BigDecimal cosine = series(degrees.multiply(PI).divide(HALF_TURN, WORKING));
        boolean isNoise = cosine.abs().movePointRight(40).compareTo(BigDecimal.ONE) < 0;
        return isNoise ? BigDecimal.ZERO : cosine.round(DIGITS);
    }

    /** 1 − x²/2! + x⁴/4! − …, until a term no longer counts; x at most π. */
    private static BigDecimal series(BigDecimal x) {
        BigDecimal square = x.multiply(x, WORKING);
        BigDecimal term = BigDecimal.ONE;
        BigDecimal sum = BigDecimal.ONE;
        for (int n = 2; term.movePointRight(54).abs().compareTo(BigDecimal.ONE) > 0; n += 2) {
            term = term.multiply(square, WORKING)
                    .divide(BigDecimal.valueOf((long) n * (n - 1)), WORKING)
                    .negate();
            sum = sum.add(term, WORKING);
        }
        return sum;
    }
}
