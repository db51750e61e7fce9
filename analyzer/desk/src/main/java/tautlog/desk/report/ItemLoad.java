package tautlog.desk.report;

import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.rig.Band;

/**
 * What one item of a hookup carried at an overload's greatest tension. Forces in newtons.
 *
 * @param gear its id
 * @param allowedIsAtMost the allowed load is only an upper bound, the share therefore a lower one
 * @param proofNewtons empty when none is published
 * @param breakingNewtons empty when none is published
 * @param share load / allowed
 * @param band empty when the load was within the allowed one
 */
public record ItemLoad(
        String gear,
        double loadNewtons,
        double allowedNewtons,
        boolean allowedIsAtMost,
        OptionalDouble proofNewtons,
        OptionalDouble breakingNewtons,
        double share,
        Optional<Band> band) {}
