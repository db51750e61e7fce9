package tautlog.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Units of force, with their exact size.
 *
 * <p>Kilogram, tonne and pound are masses; as forces they stand for their weight at standard gravity, 9.80665 m/s² (3rd
 * General Conference on Weights and Measures, 1901). The pound is 0.45359237 kg exactly (international yard and pound
 * agreement, 1959), so that 1 lbf = 4.4482216152605 N.
 */
public enum ForceUnit {
    N("N", "1", 0),
    KN("kN", "1000", 1),
    DAN("daN", "10", 0),
    KGF("kgf", "9.80665", 0),
    KG("kg", "9.80665", 0),
    T("t", "9806.65", 2),
    LBF("lbf", "4.4482216152605", 0),
    LB("lb", "4.4482216152605", 0);

    /** The units that a screen may show. */
    public static final List<ForceUnit> ON_SCREEN = List.of(KN, DAN, KGF, T, LBF);

    private static final BigDecimal SMALL = BigDecimal.TEN;

    private final String symbol;
    private final BigDecimal newtons;
    private final int decimals;

    ForceUnit(String symbol, String newtons, int decimals) {
        this.symbol = symbol;
        this.newtons = new BigDecimal(newtons);
        this.decimals = decimals;
    }

    public String symbol() {
        return symbol;
    }

    /** Newtons in one unit, exact. */
    public BigDecimal newtons() {
        return newtons;
    }

    public static Optional<ForceUnit> of(String symbol) {
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(symbol))
                .findFirst();
    }

    /**
     * A force for a screen, in this unit: {@code 15.7 kN}, {@code 3525 lbf}. Rounded half up to whole daN, kgf and lbf, to
     * 0.1 kN and 0.01 t; one more digit below 10 kN and 10 t. Never with an exponent or a comma.
     */
    public String format(BigDecimal forceNewtons) {
        return number(forceNewtons) + " " + symbol;
    }

    /** As {@link #format(BigDecimal)}; {@code forceNewtons} is finite. */
    public String format(double forceNewtons) {
        return format(new BigDecimal(forceNewtons));
    }

    /** As {@link #format(BigDecimal)} without the unit, for a table whose head names it. */
    public String number(BigDecimal forceNewtons) {
        return number(forceNewtons, RoundingMode.HALF_UP);
    }

    /** The same rounded as asked for: an end of an interval goes outwards. */
    public String number(BigDecimal forceNewtons, RoundingMode rounding) {
        BigDecimal exact = forceNewtons.divide(newtons, 20, rounding);
        int more = decimals > 0 && exact.abs().compareTo(SMALL) < 0 ? 1 : 0;
        return exact.setScale(decimals + more, rounding).toPlainString();
    }

    /** All symbols, as a message lists them. */
    static String symbols() {
        return Arrays.stream(values()).map(ForceUnit::symbol).collect(Collectors.joining(", "));
    }
}
