package tautlog.rig;

import java.util.Locale;

/** Where the load cell sits, and what it cannot see from there. */
public enum CellPlace {
    LINE("nothing of the line it hangs in"),
    DEAD_END("pulls on a single line"),
    FAIRLEAD("changes of the angle at which the line runs over it"),
    BLOCK("pulls without the block");

    private final String blindTo;

    CellPlace(String blindTo) {
        this.blindTo = blindTo;
    }

    /** As in the rig: {@code dead-end}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What it does not see, as the end of "it is blind to …". */
    public String blindTo() {
        return blindTo;
    }

    /** Whether it carries the sum of two lines with an angle between them. */
    boolean seesTwoLines() {
        return this == FAIRLEAD || this == BLOCK;
    }
}
