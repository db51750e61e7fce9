package tautlog.usage;

import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.detect.ShaftReadings;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * Meters what one outing does to gear, rope and driveline. Hand it to the detectors as their sink, and give {@link #samples} the same
 * evidence as the detectors. Not thread-safe.
 */
public final class MachineMeter implements FindingSink {
    private final ShareMeter shares;
    private final GearMeter gear;
    private final RopeMeter rope;
    private final DrivelineMeter driveline;

    /** @param calibration of the line's tension, for counts from which a moved zero was taken off */
    public MachineMeter(Instrument instrument, Rig rig, Calibration calibration) {
        shares = new ShareMeter(instrument, rig, calibration);
        gear = new GearMeter(instrument, rig, calibration);
        rope = new RopeMeter(rig, calibration);
        driveline = new DrivelineMeter(instrument, rig, calibration);
    }

    /** Takes the samples and hookups; whoever replays by runs finds {@link ShareMeter#takeWhole} here. */
    public ShareMeter samples() {
        return shares;
    }

    @Override
    public void finding(Finding finding) {
        gear.finding(finding);
    }

    @Override
    public void second(Second second) {
        // seconds carry nothing that is metered here
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        rope.cycle(rangeCounts, twiceMeanCounts, halves);
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        // what a reading speaks for comes with the interval
    }

    @Override
    public void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
        driveline.interval(ticks, rpm, samples, greatest, clutch);
    }

    @Override
    public boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
        return driveline.slackIntervals(readings, atMost, clutch);
    }

    /** All that was metered so far, of an outing whose samples went through {@link #samples}. */
    public MachineUse use(SampleClock clock) {
        return new MachineUse(gear.uses(shares, clock), rope.uses(), driveline.use());
    }

    /**
     * Of an outing whose readings were thinned, after the findings said on the day were given to {@link #finding}: times above a share,
     * cycles and what the shaft bore are not known.
     */
    public MachineUse useWithoutReadings(SampleClock clock) {
        return new MachineUse(gear.usesWithoutReadings(clock), rope.usesWithoutReadings(), DrivelineUse.NOT_DESCRIBED);
    }
}
