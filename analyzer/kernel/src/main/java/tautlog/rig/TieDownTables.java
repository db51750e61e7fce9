package tautlog.rig;

import java.math.BigDecimal;
import java.util.Optional;
import tautlog.quantity.ForceUnit;
import tautlog.quantity.Length;

/**
 * Working load limits of unmarked material, 49 CFR 393.108; its pounds column, 1 lbf = 4.4482216152605 N.
 *
 * <p>The table is made for cargo tie-downs; for pulling it is borrowed, which every rating from it says. Grade 70 of 5/16 in
 * is rated higher there than grade 80 of 5/16 in: the limit need not rise with the grade.
 */
final class TieDownTables {
    static final ShippedTable CHAIN = ShippedTable.named("chain-wll.csv");
    static final ShippedTable WEB = ShippedTable.named("web-wll.csv");
    static final ShippedTable ROPE = ShippedTable.named("rope-wll.csv");

    private TieDownTables() {}

    static Optional<BigDecimal> chainNewtons(int grade, Length size) {
        return newtons(CHAIN.under(Integer.toString(grade)), size);
    }

    static Optional<BigDecimal> webNewtons(Length width) {
        return newtons(WEB, width);
    }

    static Optional<BigDecimal> ropeNewtons(Length diameter) {
        return newtons(ROPE, diameter);
    }

    private static Optional<BigDecimal> newtons(ShippedTable table, Length size) {
        return table.bySize(size).map(pounds -> pounds.multiply(ForceUnit.LBF.newtons()));
    }
}
