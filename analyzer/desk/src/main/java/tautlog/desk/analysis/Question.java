package tautlog.desk.analysis;

import java.time.Instant;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.recording.Outing;
import tautlog.rig.Rig;

/**
 * How a history is to be read.
 *
 * @param rig another rig than that of the day
 * @param hookup id of the hookup that is taken to be on all the time
 * @param calibration another calibration of the load cell than that of the day
 * @param from findings that end before it are left out, and so is the time before it
 * @param to findings that start at it or later are left out
 */
public record Question(
        Optional<Rig> rig,
        Optional<String> hookup,
        Optional<CellCalibration> calibration,
        Optional<Instant> from,
        Optional<Instant> to) {
    /** As on the day, all of it. */
    public static final Question AS_RECORDED =
            new Question(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** With which calibration of the load cell an outing is read. */
    CellCalibration calibrationOf(Outing outing) {
        return calibration.orElse(outing.start().calibration());
    }

    boolean isWhole() {
        return from.isEmpty() && to.isEmpty();
    }

    /** Whether something that starts at {@code utc} belongs to the time asked for; what has no time only to all of it. */
    boolean includes(Optional<Instant> utc) {
        return utc.map(at -> from.map(start -> !at.isBefore(start)).orElse(true)
                        && to.map(at::isBefore).orElse(true))
                .orElse(isWhole());
    }

    /** Whether some of what lasts from {@code start} to {@code end}, both included, lies in the time asked for. */
    boolean overlaps(Optional<Instant> start, Optional<Instant> end) {
        if (start.isEmpty() || end.isEmpty()) {
            return isWhole();
        }
        boolean endsTooEarly = from.isPresent() && end.get().isBefore(from.get());
        boolean startsTooLate = to.isPresent() && !start.get().isBefore(to.get());
        return !endsTooEarly && !startsTooLate;
    }
}
