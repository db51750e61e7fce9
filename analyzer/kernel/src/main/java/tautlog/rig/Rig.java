package tautlog.rig;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The winch, its gear and hookups, as {@code rig.toml} says.
 *
 * @param winch name of the winch
 * @param ratedPullNewtons the winch's full pull on the first layer
 * @param hookups one or more
 * @param detect settings of the detectors
 * @param cellCapacityNewtons the line's tension at which the load cell reaches its own rating; beyond it a reading is "at
 *     least"
 * @param driveline empty when the rig does not describe drum and shaft
 */
public record Rig(
        String winch,
        BigDecimal ratedPullNewtons,
        List<Hookup> hookups,
        DetectSettings detect,
        Optional<BigDecimal> cellCapacityNewtons,
        Optional<Driveline> driveline) {
    public Rig {
        hookups = List.copyOf(hookups);
    }

    public Optional<Hookup> hookup(String id) {
        return hookups.stream().filter(h -> h.id().equals(id)).findFirst();
    }

    public Optional<Hookup> bySelector(int position) {
        return hookups.stream()
                .filter(h -> h.selector().isPresent() && h.selector().getAsInt() == position)
                .findFirst();
    }

    /** The hookup when nobody said which is on: the rig's default, else the one with the lowest limit. */
    public Hookup assumed() {
        return hookups.stream()
                .filter(Hookup::isDefault)
                .findFirst()
                .orElseGet(() -> hookups.stream()
                        .min(Comparator.comparing(h -> h.limit().newtons()))
                        .orElseThrow());
    }
}
