package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;

/**
 * The greatest tension at which no item of a hookup exceeds its working load limit.
 *
 * @param newtons above 0
 * @param isAtMost true when it is only an upper bound (an unrated choke angle): the true limit is lower
 * @param governing id of the gear that sets it; of equals the first listed
 */
public record Limit(BigDecimal newtons, boolean isAtMost, String governing) {
    /**
     * Least of allowed load / multiple. Only an upper bound as soon as one item's allowed load is: that item's true one may
     * lie below what governs here.
     *
     * @param items one or more
     */
    static Limit of(List<LoadedItem> items) {
        // min keeps the first of equals
        LoadedItem least = items.stream()
                .min(Comparator.comparing(LoadedItem::tensionAtAllowed))
                .orElseThrow();
        boolean isAtMost = items.stream().anyMatch(LoadedItem::allowedIsAtMost);
        return new Limit(least.tensionAtAllowed(), isAtMost, least.gear());
    }
}
