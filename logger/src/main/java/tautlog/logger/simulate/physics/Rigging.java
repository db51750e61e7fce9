package tautlog.logger.simulate.physics;

import java.util.List;

/**
 * The chain of parts between drum and log, for one pull.
 *
 * @param hookup its id in the rig
 * @param selector position of the switch on the instrument
 * @param parts in the order from the drum to the log
 * @param ropeStiffness EA of the rope, N
 * @param otherCompliance stretch of everything but the rope per newton of tension, m/N: chain length / EA, and for a
 *     block's strap the square of its multiple over its stiffness
 * @param sheaveEfficiency tension behind the block / tension at the drum while winding in; 1 without a block
 * @param slipsAt tension at which the choker slides off, N; infinite when it never does
 */
public record Rigging(
        String hookup,
        int selector,
        List<Part> parts,
        double ropeStiffness,
        double otherCompliance,
        double sheaveEfficiency,
        double slipsAt) {
    public Rigging {
        parts = List.copyOf(parts);
    }

    /** The same with another strength for one part: worn, cut, or replaced. */
    public Rigging withStrength(String gear, double strengthNewtons) {
        List<Part> changed = parts.stream()
                .map(p -> p.gear().equals(gear) ? new Part(gear, p.multiple(), strengthNewtons, p.freesMetres()) : p)
                .toList();
        return new Rigging(hookup, selector, changed, ropeStiffness, otherCompliance, sheaveEfficiency, slipsAt);
    }

    /** The same with a choker that slides off at {@code newtons}. */
    public Rigging slippingAt(double newtons) {
        return new Rigging(hookup, selector, parts, ropeStiffness, otherCompliance, sheaveEfficiency, newtons);
    }
}
