package tautlog.desk.report;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.rig.Band;
import tautlog.rig.Gear;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;

/**
 * What one item of a hookup carried at an overload's greatest tension. Forces in newtons.
 *
 * @param gear its id
 * @param alike how many identical pieces there are, 1 or more: which of them was on is not known
 * @param allowedIsAtMost the allowed load is only an upper bound, the share therefore a lower one
 * @param proofNewtons empty when none is published
 * @param breakingNewtons empty when none is published
 * @param share load / allowed
 * @param band empty when the load was within the allowed one
 * @param load where the true load lies
 * @param bandMayBe the band at that interval's upper end; empty when it is within the allowed load, or nothing is known of it; never
 *     better than past-wll where the allowed load is only an upper bound
 */
public record ItemLoad(
        String gear,
        int alike,
        double loadNewtons,
        double allowedNewtons,
        boolean allowedIsAtMost,
        OptionalDouble proofNewtons,
        OptionalDouble breakingNewtons,
        double share,
        Optional<Band> band,
        Interval load,
        Optional<Band> bandMayBe) {
    /**
     * What {@code item} carries.
     *
     * @param rig which it is of
     * @param tension in the line, newtons
     * @param interval where the true tension lies
     */
    public static ItemLoad of(LoadedItem item, Rig rig, BigDecimal tension, Interval interval) {
        return new ItemLoad(
                item.gear(),
                alike(item.gear(), rig),
                item.loadNewtons(tension).doubleValue(),
                item.allowedNewtons().doubleValue(),
                item.allowedIsAtMost(),
                optional(item.proofNewtons()),
                optional(item.breakingNewtons()),
                item.share(tension).doubleValue(),
                item.band(tension),
                interval.times(item.multiple().doubleValue()),
                BandDoubt.mayBe(item, interval));
    }

    private static int alike(String id, Rig rig) {
        return rig.gear().stream()
                .filter(gear -> gear.id().equals(id))
                .mapToInt(Gear::count)
                .findFirst()
                .orElse(1);
    }

    private static OptionalDouble optional(Optional<BigDecimal> newtons) {
        return newtons.map(value -> OptionalDouble.of(value.doubleValue())).orElseGet(OptionalDouble::empty);
    }

    public Bounds shareBounds() {
        return Bounds.share(load, allowedNewtons, allowedIsAtMost);
    }

    /** Nothing is known of how far the load may be off: no band is ruled out. */
    public boolean isBandUnsure() {
        return load.lowNewtons().isEmpty();
    }

    /** A band that is not ruled out and worse than {@link #band}, or one where no reading was past the allowed load. */
    public Optional<Band> worseMayBe() {
        return bandMayBe.filter(
                worse -> band.map(seen -> worse.compareTo(seen) > 0).orElse(true));
    }
}
