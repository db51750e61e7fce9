package tautlog.rig;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import tautlog.quantity.Length;

/**
 * The least thickness that a worn chain link may have at any point: Table N-184-1 of 29 CFR 1910.184, as reproduced in
 * Michigan Administrative Code R 408.14923.
 */
final class ChainWear {
    private static final List<String[]> ROWS =
            ShippedTable.named("chain-least-thickness.csv").rows();

    private ChainWear() {}

    /**
     * The least thickness for chain of {@code size}.
     *
     * <p>A size between two rows (5/16 in, 7/16 in) lies as far between their thicknesses: our own decision, the table has
     * no such rows. Empty for a size below the first or above the last row.
     */
    static Optional<BigDecimal> leastMillimetres(Length size) {
        BigDecimal mm = nominal(size).millimetres();
        for (int i = 0; i + 1 < ROWS.size(); i++) {
            if (mm.compareTo(cell(i, 0)) >= 0 && mm.compareTo(cell(i + 1, 0)) <= 0) {
                return Optional.of(between(i, mm));
            }
        }
        return Optional.empty();
    }

    private static BigDecimal between(int row, BigDecimal mm) {
        BigDecimal sizeStep = cell(row + 1, 0).subtract(cell(row, 0));
        BigDecimal step = cell(row + 1, 1).subtract(cell(row, 1));
        BigDecimal beyond = mm.subtract(cell(row, 0));
        return cell(row, 1).add(step.multiply(beyond).divide(sizeStep, MathContext.DECIMAL64));
    }

    /** A nominal metric size (8 mm) is its trade size in inches (5/16 in), which is what the table speaks of. */
    private static Length nominal(Length size) {
        return TieDownTables.CHAIN.rows().stream()
                .filter(row -> size.sameAs(Length.parse(row[2] + " mm")))
                .map(row -> ShippedTable.inches(row[1]))
                .findFirst()
                .orElse(size);
    }

    private static BigDecimal cell(int row, int column) {
        return ShippedTable.inches(ROWS.get(row)[column]).millimetres();
    }
}
