package tautlog.desk.incident;

import java.util.Optional;

/** Where the last inspection of gear is written down, beside the rig. */
public interface InspectionLedger {
    /** No ledger was read. */
    InspectionLedger NONE = gear -> Optional.empty();

    /** The last inspection of the gear with that id; empty when there is none. */
    Optional<Inspection> last(String gear);

    /**
     * One inspection.
     *
     * @param day as it was written
     * @param what who inspected, what was found; may be empty
     */
    record Inspection(String day, String what) {}
}
