package tautlog.desk.page;

import tautlog.rig.Band;
import tautlog.rig.LoadedItem;

/** What to do with gear that carried more than it may. Source: {@code FINDINGS.md}, Overload. */
public final class OverloadedGear {
    private OverloadedGear() {}

    /**
     * One sentence or two.
     *
     * @param gear its id
     * @param band the worst that it passed
     */
    public static String todo(String gear, Band band) {
        if (gear.equals(LoadedItem.CELL)) {
            return "Take the load cell out of use until it has been inspected and calibrated again.";
        }
        return switch (band) {
            case PAST_WLL -> "Take it out of service until a competent person has inspected it.";
            case PAST_PROOF ->
                "Take it out of service: it is measured and inspected by a competent person, or scrapped. Inspect its"
                        + " neighbours in the line too.";
            case PAST_BREAKING -> "Scrap it. Inspect its neighbours in the line.";
        };
    }
}
