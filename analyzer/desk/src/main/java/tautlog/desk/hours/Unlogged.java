package tautlog.desk.hours;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import tautlog.service.Act;

/**
 * Work that was done while nothing was recorded, as a ledger tells it.
 *
 * @param entries how many there are
 * @param shaftHours of those that say it; so are the others
 */
public record Unlogged(int entries, Figure shaftHours, Figure pullHours, Figure pulls) {
    public static final Unlogged NONE = of(List.of());

    /**
     * A sum.
     *
     * @param known of those entries that say it
     * @param silent how many do not: with one of them the sum is "at least"
     */
    public record Figure(BigDecimal known, int silent) {
        static Figure of(List<Act.Worked> worked, Function<Act.Worked, Optional<BigDecimal>> figure) {
            return new Figure(
                    worked.stream().flatMap(one -> figure.apply(one).stream()).reduce(BigDecimal.ZERO, BigDecimal::add),
                    (int) worked.stream()
                            .filter(one -> figure.apply(one).isEmpty())
                            .count());
        }

        public boolean isAtLeast() {
            return silent > 0;
        }
    }

    static Unlogged of(List<Act.Worked> worked) {
        return new Unlogged(
                worked.size(),
                Figure.of(worked, Act.Worked::shaftHours),
                Figure.of(worked, Act.Worked::pullHours),
                Figure.of(worked, Act.Worked::pulls));
    }
}
