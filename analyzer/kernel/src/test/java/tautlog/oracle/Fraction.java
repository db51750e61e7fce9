package tautlog.oracle;

import java.math.BigDecimal;
import java.math.BigInteger;

/** An exact speed in revolutions per minute; the denominator is above 0. */
record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {
    static final Fraction ZERO = of(0, 1);

    static Fraction of(long numerator, long denominator) {
        return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    static Fraction of(BigDecimal decimal) {
        BigDecimal plain = decimal.setScale(Math.max(0, decimal.scale()));
        return new Fraction(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()));
    }

    Fraction plus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    Fraction times(Fraction other) {
        return new Fraction(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    Fraction min(Fraction other) {
        return compareTo(other) <= 0 ? this : other;
    }

    double value() {
        return new BigDecimal(numerator)
                .divide(new BigDecimal(denominator), java.math.MathContext.DECIMAL64)
                .doubleValue();
    }

    @Override
    public int compareTo(Fraction other) {
        if (isShort() && other.isShort()) {
            return Long.compare(
                    numerator.longValue() * other.denominator.longValue(),
                    other.numerator.longValue() * denominator.longValue());
        }
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    /** True when products with another such one fit into a long. */
    private boolean isShort() {
        return numerator.bitLength() < 32 && denominator.bitLength() < 31;
    }
}
