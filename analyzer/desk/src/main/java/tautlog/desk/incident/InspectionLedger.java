package tautlog.desk.incident;

import java.util.List;

/** Where inspections of gear are written down, beside the rig. */
public interface InspectionLedger {
    /** No ledger was read. */
    InspectionLedger NONE = gear -> List.of();

    /** The last line about each piece of the gear with that id, up to the moment asked for; empty when there is none. */
    List<Line> last(String gear);

    /** Lines that could not be used. */
    default long unusable() {
        return 0;
    }

    /**
     * One line.
     *
     * @param day on which it was so, as {@code 2026-05-04}
     * @param what was found or decided, which piece it was and who says so, in words
     */
    record Line(String day, String what) {}
}
