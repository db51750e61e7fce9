package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How gear is arranged for a pull.
 *
 * @param selector 1 to 15, the position of the instrument's switch
 * @param items as listed in the rig, the load cell last if its capacity is known
 */
public record Hookup(String id, boolean isDefault, OptionalInt selector, List<LoadedItem> items, Limit limit) {
    public Hookup {
        items = List.copyOf(items);
    }

    /** The worst band over all items at this tension; empty when every item is within its allowed load. */
    public Optional<Band> band(BigDecimal tensionNewtons) {
        return items.stream()
                .flatMap(item -> item.band(tensionNewtons).stream())
                .max(Comparator.naturalOrder());
    }
}
