package tautlog.quantity;

import java.math.BigDecimal;
import java.util.Map;

/** A length of time as a person writes it, exact. */
public record TimeSpan(BigDecimal seconds) {
    private static final Map<String, BigDecimal> SECONDS = Map.of(
            "ms", new BigDecimal("0.001"),
            "s", BigDecimal.ONE,
            "min", new BigDecimal("60"),
            "h", new BigDecimal("3600"));
    private static final Notation NOTATION = new Notation("a time", "0.3 s", "above 0; units ms, s, min, h");

    /**
     * Reads {@code "0.3 s"}, {@code "300 ms"}.
     *
     * @throws QuantityException if it is anything else, or not above 0
     */
    public static TimeSpan parse(String text) {
        Notation.Parts parts = NOTATION.split(text);
        BigDecimal unit = SECONDS.get(parts.unit());
        if (unit == null) {
            throw NOTATION.unknownUnit(text, parts.unit());
        }
        if (parts.number().signum() <= 0) {
            throw NOTATION.notAboveZero(text);
        }
        return new TimeSpan(parts.number().multiply(unit));
    }

    /** In seconds, exact; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return seconds.toPlainString() + " s";
    }
}
