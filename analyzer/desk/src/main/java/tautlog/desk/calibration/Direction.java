package tautlog.desk.calibration;

import java.util.Locale;

/** Whether a load was come to from below or from above. */
enum Direction {
    UP,
    DOWN,
    /** Nobody said it: such a reading tells nothing of hysteresis. */
    UNSAID;

    /** As the column {@code direction} holds it; empty when nobody said it. */
    String word() {
        return this == UNSAID ? "" : name().toLowerCase(Locale.ROOT);
    }
}
