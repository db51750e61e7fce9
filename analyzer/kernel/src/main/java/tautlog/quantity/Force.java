package tautlog.quantity;

import java.math.BigDecimal;

/** A force as a person writes it, exact. */
public record Force(BigDecimal newtons) {
    private static final Notation NOTATION =
            new Notation("a force", "12.5 kN", "above 0; units " + ForceUnit.symbols());

    public static Force ofNewtons(String decimal) {
        return new Force(new BigDecimal(decimal));
    }

    public static Force of(BigDecimal number, ForceUnit unit) {
        return new Force(number.multiply(unit.newtons()));
    }

    /**
     * Reads {@code "12.5 kN"}: digits, perhaps a point and digits, a unit of {@link ForceUnit}.
     *
     * @throws QuantityException if it is anything else, or not above 0
     */
    public static Force parse(String text) {
        Notation.Parts parts = NOTATION.split(text);
        ForceUnit unit = ForceUnit.of(parts.unit()).orElseThrow(() -> NOTATION.unknownUnit(text, parts.unit()));
        if (parts.number().signum() <= 0) {
            throw NOTATION.notAboveZero(text);
        }
        return of(parts.number(), unit);
    }

    /** For a screen; see {@link ForceUnit#format(BigDecimal)}. */
    public String format(ForceUnit unit) {
        return unit.format(newtons);
    }

    /** In newtons, exact; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return newtons.toPlainString() + " N";
    }
}
