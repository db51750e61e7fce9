package tautlog.rig;

import java.util.Locale;

/** How far a load is past what an item may carry; the worst is the last. */
public enum Band {
    PAST_WLL,
    PAST_PROOF,
    PAST_BREAKING;

    /** As in JSON: {@code past-wll}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
