package tautlog.rig;

import java.util.Locale;

/** Which end of the driveline the speed sensor sees. */
public enum ShaftEnd {
    TRACTOR,
    WINCH;

    /** As in the rig: {@code tractor}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
