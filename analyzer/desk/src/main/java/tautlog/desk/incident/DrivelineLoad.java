package tautlog.desk.incident;

import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.detect.Known;
import tautlog.rig.Driveline;

/**
 * What the shaft bore at the greatest tension. The layer on which the rope ran is not known: from the first to the last. Source:
 * {@code analyzer/FINDINGS.md}, Hours, and {@link Driveline}.
 *
 * @param leastNewtonMetres with the lower end of the tension's interval on the first layer; of the reading itself where no interval is
 *     known; 0 where the clutch was not known to be engaged
 * @param greatestNewtonMetres likewise, upper end, last layer; empty where the tension has no upper end
 * @param isAtMost the clutch is not known: it may have been less, or nothing
 * @param tensionIsBounded whether an interval of the tension is in it
 * @param rpm the shaft's speed then; empty when it is not known
 * @param kilowatts at {@code greatestNewtonMetres} and {@code rpm}
 */
public record DrivelineLoad(
        double leastNewtonMetres,
        OptionalDouble greatestNewtonMetres,
        double ratedNewtonMetres,
        double ratedRpm,
        int layers,
        Known clutch,
        boolean isAtMost,
        boolean tensionIsBounded,
        OptionalDouble rpm,
        OptionalDouble kilowatts) {
    /** Empty where the rig does not describe drum and shaft, or nothing was pulled. */
    static Optional<DrivelineLoad> of(Optional<Driveline> driveline, Optional<Subject> subject, Readings readings) {
        return driveline.flatMap(drive -> subject.map(of -> of(drive, of, readings.subject())));
    }

    private static DrivelineLoad of(Driveline drive, Subject subject, Readings.AtGreatest then) {
        boolean bounded = subject.peakInterval().lowNewtons().isPresent();
        double low = Math.max(0, subject.peakInterval().lowNewtons().orElse(subject.peakNewtons()));
        OptionalDouble high = bounded
                ? subject.peakInterval().highNewtons()
                : subject.atLeast() ? OptionalDouble.empty() : OptionalDouble.of(subject.peakNewtons());
        OptionalDouble greatest = high.isPresent()
                ? OptionalDouble.of(drive.greatestShaftTorque(high.getAsDouble()))
                : OptionalDouble.empty();
        boolean engaged = then.clutch() == Known.YES;
        return new DrivelineLoad(
                engaged ? drive.leastShaftTorque(low) : 0,
                greatest,
                drive.ratedTorqueNewtonMetres(),
                drive.ratedRpm(),
                drive.layers(),
                then.clutch(),
                !engaged,
                bounded,
                then.rpm(),
                greatest.isPresent() && then.rpm().isPresent()
                        ? OptionalDouble.of(Driveline.powerKilowatts(
                                greatest.getAsDouble(), then.rpm().getAsDouble()))
                        : OptionalDouble.empty());
    }
}
