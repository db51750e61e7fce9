package tautlog.desk.page;

import java.util.List;
import tautlog.rig.Band;
import tautlog.rig.LoadedItem;

/** What to do with gear that carried more than it may. Source: {@code FINDINGS.md}, Overload. */
public final class OverloadedGear {
    /** Over the section that says which gear is out of service. */
    public static final String HEADING = "Gear that is out of service";

    /** Said wherever gear is shown and no ledger was read. */
    public static final String NO_LEDGER =
            "No ledger was read: whether gear was inspected, replaced or taken out of service is not known here.";

    private OverloadedGear() {}

    /** The section of a report without a ledger. */
    public static Document.Section withoutLedger() {
        return new Document.Section(
                HEADING, List.of(new Block.Paragraph(NO_LEDGER + " Give --ledger ledger.jsonl to have it told.")));
    }

    /** The section of a report that does not tell of the day. */
    public static Document.Section whatIf() {
        return new Document.Section(
                HEADING,
                List.of(new Block.Paragraph(
                        "This is a WHAT IF: which gear is out of service is in the report without --rig, --calibration and"
                                + " --hookup.")));
    }

    /** Which is meant where there are several, with a space before it; nothing where there is one. */
    public static String alike(int count) {
        return count > 1
                ? " It is one of " + count + " alike, and which of them was on is not known: all " + count
                        + " are meant until it is."
                : "";
    }

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
