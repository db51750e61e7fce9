package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import tautlog.quantity.Angle;

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

    /** A fixed block turns the line: the angle between its parts decides what block and strap carry. */
    public boolean turnsTheLine() {
        return items.stream().anyMatch(item -> item.turn().isPresent());
    }

    /**
     * The same hookup with this angle between the lines, at each of its fixed blocks and their straps; the limit is worked
     * out anew.
     *
     * @throws IllegalArgumentException if the angle is more than 150 degrees
     */
    public Hookup withBlockAngle(Angle betweenLines) {
        if (BlockAngle.isTooWide(betweenLines)) {
            throw new IllegalArgumentException(BlockAngle.found(betweenLines) + ". " + BlockAngle.ALLOWED);
        }
        List<LoadedItem> turned =
                items.stream().map(item -> item.turnedTo(betweenLines)).toList();
        return new Hookup(id, isDefault, selector, turned, Limit.of(turned));
    }

    /** Pull on what hangs at the line's end / tension: 1, or the multiple of a moving block. */
    public BigDecimal pullPerTension() {
        return items.stream()
                .filter(item -> item.as().equals(Place.MOVING_BLOCK.word()))
                .map(LoadedItem::multiple)
                .findFirst()
                .orElse(BigDecimal.ONE);
    }

    /** The worst band over all items at this tension; empty when every item is within its allowed load. */
    public Optional<Band> band(BigDecimal tensionNewtons) {
        return items.stream()
                .flatMap(item -> item.band(tensionNewtons).stream())
                .max(Comparator.naturalOrder());
    }
}
