package tautlog.desk.planning;

import java.util.Optional;
import tautlog.plan.HaulText;

/**
 * What a person asks of a plan.
 *
 * @param blockAngle angle between the lines at every fixed block, {@code 60 deg}; empty for the rig's
 * @param hookup the only hookup to show; empty for all
 */
public record PlanText(HaulText haul, Optional<String> blockAngle, Optional<String> hookup) {}
