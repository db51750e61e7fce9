package tautlog.desk.use;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.detect.ShaftReadings;
import tautlog.usage.Hours;
import tautlog.usage.MachineMeter;

/** Meters one outing: hours, gear and driveline, what may call for service, and for how long the shaft spoke. */
final class UseCollector implements FindingSink {
    private final Hours hours;
    private final MachineMeter machine;
    private final long tickHz;
    private final long firstTick;
    private final long lastTick;
    private final List<Finding> events = new ArrayList<>();
    private boolean anyReading;
    private long readingTick;
    private long spokenTicks;

    /**
     * @param firstTick from which on time counts
     * @param lastTick to which it counts
     */
    UseCollector(Hours hours, MachineMeter machine, long tickHz, long firstTick, long lastTick) {
        this.hours = hours;
        this.machine = machine;
        this.tickHz = tickHz;
        this.firstTick = firstTick;
        this.lastTick = lastTick;
    }

    /** Everything found but pulls and trouble, in the order in which it was completed. */
    List<Finding> events() {
        return events;
    }

    /** Ticks for which no reading speaks, of those that count. */
    long ticksWithoutShaft() {
        return Math.max(0, lastTick - firstTick) - spokenTicks;
    }

    @Override
    public void finding(Finding finding) {
        hours.finding(finding);
        machine.finding(finding);
        if (!(finding instanceof Finding.Pull || finding instanceof Finding.Trouble)) {
            events.add(finding);
        }
    }

    @Override
    public void second(Second second) {}

    @Override
    public boolean takesSeconds() {
        return false;
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        machine.cycle(rangeCounts, twiceMeanCounts, halves);
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        hours.shaftReading(tick, rpm);
        if (anyReading) {
            long from = Math.max(readingTick, firstTick);
            long to = Math.min(Math.min(tick, readingTick + tickHz), lastTick);
            spokenTicks += Math.max(0, to - from);
        }
        anyReading = true;
        readingTick = tick;
    }

    @Override
    public void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
        hours.shaftInterval(ticks, rpm, samples, greatest, clutch);
        machine.shaftInterval(ticks, rpm, samples, greatest, clutch);
    }

    @Override
    public boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
        return hours.areWearless(readings, atMost, clutch)
                && machine.slackIntervals(readings, atMost, clutch)
                && hours.slackIntervals(readings, atMost, clutch);
    }
}
