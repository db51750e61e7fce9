package tautlog.usage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.ShaftReadings;
import tautlog.rig.Driveline;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;
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
    private final Curve curve;
    private final double leastTorquePerNewton;
    private final double mostTorquePerNewton;
    private final int atLeastFrom;
    private final int slackBelow;
    /** What was found to be mere slack last. */
    private int slackCount = Integer.MIN_VALUE;

    private double slackRpm = -1;
    private boolean slackIsEngaged;
    private final LayerTimes first = new LayerTimes();
    private final LayerTimes last = new LayerTimes();
    private long latestTicks = -1;
    private long latestNanos;
    private long engaged;
    private long clutchUnknown;
    private long disengaged;
    private long tensionUnknown;
    private long still;
    private final GreatestExtent torque = new GreatestExtent();
    /** Torque times speed, which power is in proportion to. */
    private final GreatestExtent power = new GreatestExtent();

    private long aboveLeast;
    private long aboveMost;

    DrivelineMeter(Instrument instrument, Rig rig, Calibration calibration) {
        tickHz = instrument.tickHz();
        driveline = instrument.pulsesPerRevolution() == 0 ? Optional.empty() : rig.driveline();
        curve = calibration.curve();
        leastTorquePerNewton = driveline.map(line -> line.leastShaftTorque(1)).orElse(Double.NaN);
        mostTorquePerNewton = driveline.map(line -> line.greatestShaftTorque(1)).orElse(Double.NaN);
        atLeastFrom = LineCalibration.atLeastFrom(calibration, instrument, rig);
        slackBelow = calibration.leastCountsAtOrAbove(rig.detect().slackBelowNewtons());
    }

    /** Time by class on one layer. */
    private static final class LayerTimes {
        private static final int SPEEDS = TorqueSpeedCell.MOST_SPEED + 1;

        private final long[] nanos = new long[(TorqueSpeedCell.MOST_TORQUE + 1) * SPEEDS];

        void add(int torqueClass, int speedClass, long time) {
            int place = torqueClass * SPEEDS + speedClass;
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

    /** {@link Extent#or} of many, without an object each. */
    private static final class GreatestExtent {
        private boolean seen;
        private double low;
        private double high;
        private boolean atLeast;

        void offer(double atLow, double atHigh, boolean isAtLeast) {
            seen = true;
            low = atLow > low ? atLow : low;
            high = atHigh > high ? atHigh : high;
            atLeast |= isAtLeast;
        }

        /** Whether figures up to these would change nothing. */
        boolean holds(double atLow, double atHigh) {
            return seen && atLow <= low && atHigh <= high;
        }

        /** Of the figures times {@code unit}. */
        Extent extent(double unit) {
            return seen ? new Extent(true, low * unit, high * unit, atLeast) : Extent.NONE;
        }
    }

    /** As {@link tautlog.detect.FindingSink#shaftInterval}. */
    void interval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
        if (driveline.isEmpty()) {
            return;
        }
        long time = nanos(ticks);
        if (isIdle(rpm, clutch)) {
            idle(time, rpm);
        } else if (samples == 0) {
            tensionUnknown += time;
            aboveMost += time;
        } else {
            loaded(driveline.get(), time, rpm, greatest, clutch);
        }
    }

    /** As {@link tautlog.detect.FindingSink#slackIntervals}. */
    boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
        if (driveline.isEmpty()) {
            return true;
        }
        Driveline line = driveline.get();
        boolean isEngaged = clutch == Known.YES;
        double fastest = readings.greatestRpmBeforeLast();
        if (!isIdle(fastest, clutch) && !isMereSlack(line, fastest, atMost, isEngaged)) {
            return false;
        }
        for (int i = 0; i < readings.size() - 1; i++) {
            long time = nanos(readings.tick(i + 1) - readings.tick(i));
            double rpm = readings.rpm(i);
            if (isIdle(rpm, clutch)) {
                idle(time, rpm);
            } else {
                slack(line, time, rpm, isEngaged);
            }
        }
        return true;
    }

    private static boolean isIdle(double rpm, Known clutch) {
        return rpm < TURNING_RPM || clutch == Known.NO;
    }

    private void idle(long time, double rpm) {
        still += rpm < TURNING_RPM ? time : 0;
        disengaged += rpm < TURNING_RPM ? 0 : time;
    }

    /** Most times between readings are the same. */
    private long nanos(long ticks) {
        if (ticks != latestTicks) {
            latestTicks = ticks;
            latestNanos = Math.round(Math.min(ticks, tickHz) * NANOS / tickHz);
        }
        return latestNanos;
    }

    private void loaded(Driveline line, long time, double rpm, GreatestCount greatest, Known clutch) {
        boolean isEngaged = clutch == Known.YES;
        if (isMereSlack(line, rpm, greatest.atMost(), isEngaged)) {
            slack(line, time, rpm, isEngaged);
        } else {
            loaded(line, time, rpm, greatest.exactly(), isEngaged);
        }
    }

    private void slack(Driveline line, long time, double rpm, boolean isEngaged) {
        engage(time, isEngaged);
        int speed = speedClass(line, rpm);
        first.add(0, speed, time);
        last.add(0, speed, time);
    }

    private void engage(long time, boolean isEngaged) {
        engaged += isEngaged ? time : 0;
        clutchUnknown += isEngaged ? 0 : time;
    }

    private static int speedClass(Driveline line, double rpm) {
        return TorqueSpeedCell.speedClass(rpm / line.ratedRpm());
    }

    /** Whether a greatest count of at most {@code count} is slack line and no new greatest torque or power: most time is. */
    private boolean isMereSlack(Driveline line, double rpm, int count, boolean isEngaged) {
        if (count <= slackCount && rpm <= slackRpm && isEngaged == slackIsEngaged) {
            return true; // as that was, and figures only rise
        }
        boolean isMereSlack = count < slackBelow && count < atLeastFrom && holds(line, rpm, count, isEngaged);
        if (isMereSlack) {
            slackCount = count;
            slackRpm = rpm;
            slackIsEngaged = isEngaged;
        }
        return isMereSlack;
    }

    private boolean holds(Driveline line, double rpm, int count, boolean isEngaged) {
        double newtons = Math.max(0, curve.newtons(count));
        double most = newtons * mostTorquePerNewton;
        double surely = isEngaged ? newtons * leastTorquePerNewton : 0;
        return most <= line.ratedTorqueNewtonMetres()
                && torque.holds(surely, most)
                && power.holds(surely * rpm, most * rpm);
    }

    private void loaded(Driveline line, long time, double rpm, int greatest, boolean isEngaged) {
        engage(time, isEngaged);
        int speed = speedClass(line, rpm);
        double newtons = Math.max(0, curve.newtons(greatest));
        double least = newtons * leastTorquePerNewton;
        double most = newtons * mostTorquePerNewton;
        boolean isSlack = greatest < slackBelow;
        double rated = line.ratedTorqueNewtonMetres();
        first.add(isSlack ? 0 : TorqueSpeedCell.torqueClass(least / rated), speed, time);
        last.add(isSlack ? 0 : TorqueSpeedCell.torqueClass(most / rated), speed, time);
        double surely = isEngaged ? least : 0;
        boolean atLeast = greatest >= atLeastFrom;
        torque.offer(surely, most, atLeast);
        power.offer(surely * rpm, most * rpm, atLeast);
        aboveLeast += surely > rated ? time : 0;
        aboveMost += most > rated || atLeast ? time : 0;
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
                        torque.extent(1),
                        power.extent(Driveline.powerKilowatts(1, 1)),
                        aboveLeast,
                        aboveMost);
    }
}
