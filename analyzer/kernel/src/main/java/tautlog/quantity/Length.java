package tautlog.quantity;

import java.math.BigDecimal;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A length as a person writes it, exact; an inch is 25.4 mm (international yard and pound agreement, 1959). */
public record Length(BigDecimal millimetres) {
    private static final Map<String, BigDecimal> MILLIMETRES = Map.of(
            "mm", BigDecimal.ONE,
            "cm", BigDecimal.TEN,
            "m", new BigDecimal("1000"),
            "in", new BigDecimal("25.4"),
            "ft", new BigDecimal("304.8"));
    private static final Notation NOTATION = new Notation(
            "a length",
            "11 mm",
            "above 0; units mm, cm, m, in, ft; inches also as halves to 64ths (\"5/16 in\", \"1 3/8 in\")");
    private static final Pattern FRACTION =
            Pattern.compile("\\s*(?:(\\d{1,4})(?:\\s+|-))?(\\d{1,2})/(2|4|8|16|32|64)\\s*in\\s*");

    /**
     * Reads {@code "11 mm"}, {@code "40 cm"}, {@code "0.18 m"}, {@code "5/16 in"}, {@code "1 3/8 in"}, {@code "2 ft"}.
     *
     * @throws QuantityException if it is anything else, or not above 0
     */
    public static Length parse(String text) {
        Matcher fraction = FRACTION.matcher(text);
        Length length = fraction.matches() ? ofFraction(fraction) : ofDecimal(text);
        if (length.millimetres.signum() <= 0) {
            throw NOTATION.notAboveZero(text);
        }
        return length;
    }

    public static Length ofInches(BigDecimal inches) {
        return new Length(inches.multiply(MILLIMETRES.get("in")));
    }

    private static Length ofDecimal(String text) {
        Notation.Parts parts = NOTATION.split(text);
        BigDecimal unit = MILLIMETRES.get(parts.unit());
        if (unit == null) {
            throw NOTATION.unknownUnit(text, parts.unit());
        }
        return new Length(parts.number().multiply(unit));
    }

    private static Length ofFraction(Matcher fraction) {
        String whole = fraction.group(1);
        // the divisors are powers of two: the quotient is a finite decimal
        BigDecimal part = new BigDecimal(fraction.group(2)).divide(new BigDecimal(fraction.group(3)));
        return ofInches(whole == null ? part : part.add(new BigDecimal(whole)));
    }

    /** In metres, to rounding. */
    public double metres() {
        return millimetres.movePointLeft(3).doubleValue();
    }

    /** The same length, however many zeros it is written with. */
    public boolean sameAs(Length other) {
        return millimetres.compareTo(other.millimetres) == 0;
    }

    /** In millimetres, exact; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return millimetres.stripTrailingZeros().toPlainString() + " mm";
    }
}
