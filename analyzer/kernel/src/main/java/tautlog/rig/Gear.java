package tautlog.rig;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One physical part, or several identical ones.
 *
 * @param count how many identical pieces there are; a hookup uses one of them
 * @param description what it is, for a person: {@code chain, grade 70, 5/16 in}
 * @param fitted when it was taken into use
 * @param rating its working load limit, straight; empty when it has none and no hookup uses it
 * @param outOfService why it must not be used, a whole sentence; empty when nothing says so
 * @param rope how it is made, as far as it is written; empty for other kinds
 */
public record Gear(
        String id,
        GearKind kind,
        int count,
        String description,
        Optional<String> serial,
        Optional<LocalDate> fitted,
        Optional<LocalDate> lastInspection,
        Optional<Rating> rating,
        Optional<String> outOfService,
        Optional<RopeMake> rope) {}
