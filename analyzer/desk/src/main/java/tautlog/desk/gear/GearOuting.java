package tautlog.desk.gear;

import java.time.Instant;
import java.util.Optional;
import tautlog.usage.MachineUse;

/**
 * One outing of a winch, as far as its gear is concerned.
 *
 * @param start empty while it has no clock, as {@code end}
 * @param notAfter of an outing without a clock: when a later outing of the same recording began, if that is known
 */
public record GearOuting(
        String winch, Optional<Instant> start, Optional<Instant> end, Optional<Instant> notAfter, MachineUse use) {
    /** An outing with a clock, or one of which nobody can say when it was. */
    public GearOuting(String winch, Optional<Instant> start, Optional<Instant> end, MachineUse use) {
        this(winch, start, end, end, use);
    }
}
