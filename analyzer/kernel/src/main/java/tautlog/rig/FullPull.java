package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a hookup meets when the winch pulls with all it has.
 *
 * @param tensionNewtons the winch's rated pull on the first layer, the most it can pull
 */
public record FullPull(BigDecimal tensionNewtons, Hookup hookup) {
    public static FullPull of(Rig rig, Hookup hookup) {
        return new FullPull(rig.ratedPullNewtons(), hookup);
    }

    /** The items that would carry more than they may, as listed. */
    public List<LoadedItem> overloaded() {
        return hookup.items().stream()
                .filter(item -> item.band(tensionNewtons).isPresent())
                .toList();
    }

    /**
     * The item that breaks first as the tension rises: least of breaking load / multiple among those whose breaking load is
     * known; of equals the first listed. An item of {@link #ofUnknownStrength} may break before it.
     */
    public Optional<LoadedItem> breaksFirst() {
        return hookup.items().stream()
                .filter(item -> item.breakingNewtons().isPresent())
                .min(Comparator.comparing(item -> item.tensionAtBreaking().orElseThrow()));
    }

    /** The items without a published breaking load. */
    public List<LoadedItem> ofUnknownStrength() {
        return hookup.items().stream()
                .filter(item -> item.breakingNewtons().isEmpty())
                .toList();
    }

    /** The chokers that would outlast the winch's line: the rope would part first, and a rope that parts flies further. */
    public List<LoadedItem> chokersThatOutlastTheRope() {
        Optional<BigDecimal> rope = ropeParts();
        return chokers().stream()
                .filter(choker -> rope.isPresent()
                        && choker.tensionAtBreaking()
                                .filter(breaks -> breaks.compareTo(rope.get()) > 0)
                                .isPresent())
                .toList();
    }

    /** The chokers of which nobody can say whether they outlast the winch's line: a figure is missing. */
    public List<LoadedItem> chokersThatMayOutlastTheRope() {
        boolean ropeIsUnknown = ropeParts().isEmpty();
        return chokers().stream()
                .filter(choker -> ropeIsUnknown || choker.breakingNewtons().isEmpty())
                .toList();
    }

    private List<LoadedItem> chokers() {
        return withPlace(Place.CHOKER);
    }

    private Optional<BigDecimal> ropeParts() {
        return withPlace(Place.WINCH_LINE).stream()
                .flatMap(rope -> rope.tensionAtBreaking().stream())
                .min(Comparator.naturalOrder());
    }

    private List<LoadedItem> withPlace(Place place) {
        return hookup.items().stream()
                .filter(item -> item.as().equals(place.word()))
                .toList();
    }
}
