package tautlog.plan;

import java.util.Optional;

/**
 * What a person writes of a haul.
 *
 * @param log {@code Norway spruce, 12 m, 40/28 cm}
 * @param ground a word of {@link GroundClass}
 * @param friction {@code 0.4..0.7}, instead of a ground
 * @param slope {@code 15 deg} or {@code 25 %}, above 0 uphill
 * @param slopePlusMinus how far the slope may be off, in its unit
 */
public record HaulText(
        String log,
        Optional<String> ground,
        Optional<String> friction,
        Optional<String> slope,
        Optional<String> slopePlusMinus) {}
