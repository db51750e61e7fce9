package tautlog.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/**
 * Mass by volume as a person writes it, exact to 34 digits.
 *
 * <p>A pound is 0.45359237 kg, a foot 0.3048 m (international yard and pound agreement, 1959).
 */
public record Density(BigDecimal kilogramsPerCubicMetre) {
    private static final BigDecimal POUNDS_PER_CUBIC_FOOT =
            new BigDecimal("0.45359237").divide(new BigDecimal("0.3048").pow(3), MathContext.DECIMAL128);
    private static final Map<String, BigDecimal> KILOGRAMS_PER_CUBIC_METRE = Map.of(
            "kg/m3",
            BigDecimal.ONE,
            "kg/m³",
            BigDecimal.ONE,
            "lb/ft3",
            POUNDS_PER_CUBIC_FOOT,
            "lb/ft³",
            POUNDS_PER_CUBIC_FOOT);
    private static final Notation NOTATION = new Notation("a density", "950 kg/m3", "above 0; units kg/m3, lb/ft3");

    /**
     * Reads {@code "950 kg/m3"}, {@code "59 lb/ft3"}.
     *
     * @throws QuantityException if it is anything else, or not above 0
     */
    public static Density parse(String text) {
        Notation.Parts parts = NOTATION.split(text);
        BigDecimal unit = KILOGRAMS_PER_CUBIC_METRE.get(parts.unit());
        if (unit == null) {
            throw NOTATION.unknownUnit(text, parts.unit());
        }
        if (parts.number().signum() <= 0) {
            throw NOTATION.notAboveZero(text);
        }
        return new Density(parts.number().multiply(unit));
    }
}
