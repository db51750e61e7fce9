package tautlog.rig;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * One item of a hookup: how much of the line's tension it carries, and how much it may.
 *
 * @param gear id of the gear; {@code cell} for the load cell, which is an item of every hookup
 * @param as its place in the hookup, as written in the rig: {@code straight}, {@code choker}, {@code block}, …
 * @param multiple load on the item / tension in the line
 * @param allowedNewtons its working load limit as used here
 * @param allowedIsAtMost true when {@code allowedNewtons} is only an upper bound
 * @param proofNewtons empty when none is published: the item takes no part in that band
 * @param breakingNewtons empty when none is published
 * @param notes what a reader must know: where the rating comes from, what was assumed
 */
public record LoadedItem(
        String gear,
        String as,
        BigDecimal multiple,
        BigDecimal allowedNewtons,
        boolean allowedIsAtMost,
        Optional<BigDecimal> proofNewtons,
        Optional<BigDecimal> breakingNewtons,
        List<String> notes) {
    public LoadedItem {
        notes = List.copyOf(notes);
    }
}
