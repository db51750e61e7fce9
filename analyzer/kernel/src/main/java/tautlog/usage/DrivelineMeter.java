package tautlog.usage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Known;
import tautlog.rig.Driveline;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * Sorts the time of a turning shaft by torque and speed. Source: {@code FINDINGS.md}, Driveline.
 *
 * <p>The torque of a time is that of the greatest tension in it: an upper bound, as nothing tells which reading stands for the time.
 */
final class DrivelineMeter {
    private static final double TURNING_RPM = 60;
    private static final double NANOS = 1e9;

    private final long tickHz;
    private final Optional<Driveline> driveline;
    private final Calibration calibration;
    private final int atLeastFrom;
    private final LayerTimes first = new LayerTimes();
    private final LayerTimes last = new LayerTimes();
    private long engaged;
    private long clutchUnknown;
    private long disengaged;
    private long tensionUnknown;
    private long still;
    private Extent torque = Extent.NONE;
    private Extent power = Extent.NONE;
    private long aboveLeast;
    private long aboveMost;

    DrivelineMeter(Instrument instrument, Rig rig, Calibration calibration) {
        tickHz = instrument.tickHz();
        driveline = instrument.pulsesPerRevolution() == 0 ? Optional.empty() : rig.driveline();
        this.calibration = calibration;
        atLeastFrom = LineCalibration.atLeastFrom(calibration, instrument, rig);
    }

    /** Time by class on one layer. */
    private static final class LayerTimes {
        private static final int SPEEDS = TorqueSpeedCell.MOST_SPEED + 1;

        private final long[] nanos = new long[(TorqueSpeedCell.MOST_TORQUE + 1) * SPEEDS];

        void add(double torqueShare, double speedShare, long time) {
            int place = TorqueSpeedCell.torqueClass(torqueShare) * SPEEDS + TorqueSpeedCell.speedClass(speedShare);
            nanos[place] = Math.addExact(nanos[place], time);
        }

        List<TorqueSpeedCell> cells() {
            List<TorqueSpeedCell> cells = new ArrayList<>();
            for (int place = 0; place < nanos.length; place++) {
                if (nanos[place] > 0) {
                    cells.add(new TorqueSpeedCell(place / SPEEDS, place % SPEEDS, nanos[place]));
                }
            }
            return cells;
        }
    }

    /** As {@link tautlog.detect.FindingSink#shaftInterval}. */
    void interval(long ticks, double rpm, int samples, int greatest, Known clutch) {
        if (driveline.isEmpty()) {
            return;
        }
        long time = Math.round(Math.min(ticks, tickHz) * NANOS / tickHz);
        if (rpm < TURNING_RPM) {
            still += time;
        } else if (clutch == Known.NO) {
            disengaged += time;
        } else if (samples == 0) {
            tensionUnknown += time;
            aboveMost += time;
        } else {
            loaded(driveline.get(), time, rpm, greatest, clutch);
        }
    }

    private void loaded(Driveline line, long time, double rpm, int greatest, Known clutch) {
        double newtons = Math.max(0, calibration.exactNewtons(greatest).doubleValue());
        double least = line.leastShaftTorque(newtons);
        double most = line.greatestShaftTorque(newtons);
        boolean isEngaged = clutch == Known.YES;
        engaged += isEngaged ? time : 0;
        clutchUnknown += isEngaged ? 0 : time;
        double speed = rpm / line.ratedRpm();
        first.add(least / line.ratedTorqueNewtonMetres(), speed, time);
        last.add(most / line.ratedTorqueNewtonMetres(), speed, time);
        double surely = isEngaged ? least : 0;
        boolean atLeast = greatest >= atLeastFrom;
        torque = torque.or(new Extent(true, surely, most, atLeast));
        power = power.or(
                new Extent(true, Driveline.powerKilowatts(surely, rpm), Driveline.powerKilowatts(most, rpm), atLeast));
        aboveLeast += surely > line.ratedTorqueNewtonMetres() ? time : 0;
        aboveMost += most > line.ratedTorqueNewtonMetres() || atLeast ? time : 0;
    }

    /** All so far; {@link DrivelineUse#NOT_DESCRIBED} when there is no shaft sensor or the rig does not describe drum and shaft. */
    DrivelineUse use() {
        return driveline.isEmpty()
                ? DrivelineUse.NOT_DESCRIBED
                : new DrivelineUse(
                        1,
                        0,
                        first.cells(),
                        last.cells(),
                        engaged,
                        clutchUnknown,
                        disengaged,
                        tensionUnknown,
                        still,
                        torque,
                        power,
                        aboveLeast,
                        aboveMost);
    }
}
