package tautlog.quantity;

import java.math.BigDecimal;
import java.util.Map;

/** A torque as a person writes it, exact. */
public record Torque(BigDecimal newtonMetres) {
    private static final BigDecimal POUND_FOOT = ForceUnit.LBF.newtons().multiply(new BigDecimal("0.3048"));
    private static final Map<String, BigDecimal> NEWTON_METRES = Map.of(
            "N m",
            BigDecimal.ONE,
            "Nm",
            BigDecimal.ONE,
            "N·m",
            BigDecimal.ONE,
            "kN m",
            new BigDecimal("1000"),
            "kNm",
            new BigDecimal("1000"),
            "lbf ft",
            POUND_FOOT,
            "lb ft",
            POUND_FOOT);
    private static final Notation NOTATION = new Notation("a torque", "1120 N m", "above 0; units N m, kN m, lbf ft");

    /**
     * Reads {@code "1120 N m"}.
     *
     * @throws QuantityException if it is anything else, or not above 0
     */
    public static Torque parse(String text) {
        Notation.Parts parts = NOTATION.split(text);
        BigDecimal unit = NEWTON_METRES.get(parts.unit());
        if (unit == null) {
            throw NOTATION.unknownUnit(text, parts.unit());
        }
        if (parts.number().signum() <= 0) {
            throw NOTATION.notAboveZero(text);
        }
        return new Torque(parts.number().multiply(unit));
    }

    /** In newton metres, exact; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return newtonMetres.toPlainString() + " N m";
    }
}
