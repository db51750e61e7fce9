package tautlog.desk.analysis;

import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.sample.Calibration;

/** Whether an outing is read with another calibration than its own. */
final class OtherCalibration {
    private OtherCalibration() {}

    /** The sentence for WHAT IF; empty when no figure of the report can differ. */
    static Optional<String> difference(CellCalibration ofTheDay, CellCalibration now) {
        if (sameResponse(ofTheDay.response(), now.response())
                && ofTheDay.quality().equals(now.quality())
                && ofTheDay.calibratedAt().equals(now.calibratedAt())) {
            return Optional.empty();
        }
        String when = now.calibratedAt()
                .map(at -> ", made from readings of " + at.toString().substring(0, 10))
                .orElse("");
        return Optional.of(
                "Another calibration of the load cell is used than the one stored in the recording" + when + ".");
    }

    private static boolean sameResponse(Calibration one, Calibration other) {
        return one.zeroCounts().compareTo(other.zeroCounts()) == 0
                && one.newtonsPerCount().compareTo(other.newtonsPerCount()) == 0
                && one.curvature().compareTo(other.curvature()) == 0;
    }
}
