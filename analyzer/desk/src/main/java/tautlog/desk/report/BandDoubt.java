package tautlog.desk.report;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.desk.uncertainty.Interval;
import tautlog.rig.Band;
import tautlog.rig.LoadedItem;

/** How far past what gear may carry a load may have been, as far as it is known where the true tension lies. */
final class BandDoubt {
    private BandDoubt() {}

    /**
     * The band of an item at the upper end of the tension's interval; where that is not known, the worst one of which the
     * item has a figure. An allowed load that is only known as "at most" rules nothing out: the true one is lower.
     *
     * @return empty when the item is within its allowed load even there, and when nothing at all is known of the interval
     */
    static Optional<Band> mayBe(LoadedItem item, Interval tension) {
        if (tension.lowNewtons().isEmpty()) {
            return Optional.empty();
        }
        if (tension.highNewtons().isEmpty()) {
            return Optional.of(worst(item));
        }
        Optional<Band> seen = item.band(BigDecimal.valueOf(tension.highNewtons().getAsDouble()));
        return item.allowedIsAtMost() ? seen.or(() -> Optional.of(Band.PAST_WLL)) : seen;
    }

    private static Band worst(LoadedItem item) {
        if (item.breakingNewtons().isPresent()) {
            return Band.PAST_BREAKING;
        }
        return item.proofNewtons().isPresent() ? Band.PAST_PROOF : Band.PAST_WLL;
    }

    /** The worst over all items. */
    static Optional<Band> mayBe(List<LoadedItem> items, Interval tension) {
        return items.stream().flatMap(item -> mayBe(item, tension).stream()).max(Comparator.naturalOrder());
    }
}
