package tautlog.rig;

import java.math.BigDecimal;
import java.util.List;

/**
 * The working load limit of a piece of gear, pulled straight.
 *
 * @param newtons above 0
 * @param source where it comes from, as a clause: {@code marking on the gear}
 * @param notes what a reader must know about it, whole sentences
 */
public record Rating(BigDecimal newtons, String source, List<String> notes) {
    public Rating {
        notes = List.copyOf(notes);
    }
}
