package tautlog.desk.season;

import java.util.Optional;

/**
 * What is taken to have been otherwise than on the day.
 *
 * @param hookup id of the hookup taken to have been on all the time
 * @param otherRig whether the rig given at the start is used
 * @param otherCalibration whether the calibration given at the start is used
 */
public record WhatIf(Optional<String> hookup, boolean otherRig, boolean otherCalibration) {
    public static final WhatIf NOTHING = new WhatIf(Optional.empty(), false, false);

    public boolean isNothing() {
        return equals(NOTHING);
    }

    /** Different for different switches. */
    String key() {
        return isNothing() ? "" : (otherRig ? "R" : "r") + (otherCalibration ? "C" : "c") + hookup.orElse("");
    }
}
