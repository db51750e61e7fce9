package tautlog.usage;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a person counted and measured on a wire rope; what was not looked for is empty.
 *
 * @param brokenInLay broken wires in one lay length, the worst
 * @param brokenInStrand broken wires of one strand in one lay length, the worst
 * @param brokenIn6d broken wires over six diameters, the worst
 * @param brokenIn30d broken wires over thirty diameters, the worst
 * @param brokenAtEnd broken wires at the termination
 * @param diameterMillimetres measured where it is thinnest
 * @param damage words of {@link RopeDamage}, or others
 */
public record RopeCondition(
        OptionalInt brokenInLay,
        OptionalInt brokenInStrand,
        OptionalInt brokenIn6d,
        OptionalInt brokenIn30d,
        OptionalInt brokenAtEnd,
        Optional<BigDecimal> diameterMillimetres,
        List<String> damage) {
    public RopeCondition {
        damage = List.copyOf(damage);
    }
}
