package tautlog.usage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
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
 * The hour meters of one outing; {@link #reading} adds up over outings. Source: {@code FINDINGS.md}, Hours.
 *
 * <p>Counts whole samples and ticks, so sums do not depend on their order. A shaft reading speaks for the time to the next, at most
 * 1 s: a shaft that turned without a reading for longer counts as standing still. The last reading of an outing speaks for nothing.
 *
 * <p>Feed it as a {@link FindingSink} of the detectors. Not thread-safe.
 */
public final class Hours implements FindingSink {
    private static final double TURNING_RPM = 60;
    private static final double NANOS_PER_HOUR = 3_600e9;

    private final long tickHz;
    private final Optional<JointWear> jointWear;
    private final Span shaft;
    private final Span pull;
    private final Span winching;
    private final Span held;
    private final List<Span> bands = new ArrayList<>();
    private final Map<String, Long> counts = new TreeMap<>();
    private boolean jointKnown;
    private long jointNanos;
    private boolean jointIsAtMost;
    private boolean anyReading;
    private long readingTick;
    private double readingRpm;
    private long latestTicks = -1;
    private double latestSeconds;

    /** Meters at zero, for one outing. */
    public Hours(Instrument instrument, Rig rig, Calibration calibration) {
        tickHz = instrument.tickHz();
        shaft = new Span(tickHz * 1_000);
        pull = new Span(instrument.rateMillihertz());
        winching = new Span(instrument.rateMillihertz());
        held = new Span(instrument.rateMillihertz());
        jointWear = rig.driveline()
                .filter(line -> line.jointAngleDegrees().isPresent()
                        && line.jointRatedAngleDegrees().isPresent())
                .map(line -> new JointWear(line, rig, calibration));
        jointKnown = jointWear.isPresent();
        for (int i = 0; i < MeterReading.BANDS; i++) {
            bands.add(new Span(instrument.rateMillihertz()));
        }
    }

    @Override
    public void finding(Finding finding) {
        counts.merge(finding.kind(), 1L, Long::sum);
        if (finding instanceof Finding.Pull worked) {
            pull.add(worked.endNumber() - worked.startNumber() + 1);
            winching.add(worked.winchingSamples());
            held.add(worked.heldSamples());
            for (int i = 0; i < MeterReading.BANDS; i++) {
                bands.get(i).add(worked.bandSamples().get(i));
            }
        }
    }

    @Override
    public void second(Second second) {
        // seconds carry nothing that a meter counts
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        // the rope's cycles are no hours
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        if (anyReading && readingRpm >= TURNING_RPM) {
            shaft.add(Math.min(tick - readingTick, tickHz));
        }
        anyReading = true;
        readingTick = tick;
        readingRpm = rpm;
    }

    @Override
    public void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {
        if (jointWear.isEmpty() || clutch == Known.NO) {
            return;
        }
        if (ticks != latestTicks) {
            latestTicks = ticks;
            latestSeconds = Math.min(ticks, tickHz) / (double) tickHz;
        }
        jointNanos += jointWear.get().nanos(latestSeconds, rpm, samples, greatest);
        jointIsAtMost |= clutch == Known.UNKNOWN;
    }

    @Override
    public boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
        if (!areWearless(readings, atMost, clutch)) {
            return false;
        }
        jointIsAtMost |= jointWear.isPresent() && clutch == Known.UNKNOWN;
        return true;
    }

    /** Whether {@link #slackIntervals} takes these: when they wear the joint by nothing. */
    public boolean areWearless(ShaftReadings readings, int atMost, Known clutch) {
        return jointWear.isEmpty()
                || clutch == Known.NO
                || jointWear.get().isWearless(readings.greatestRpmBeforeLast(), atMost);
    }

    /** What these meters show of the one outing that they were fed. */
    public MeterReading reading() {
        return new MeterReading(
                1,
                anyReading ? 1 : 0,
                anyReading && jointKnown ? 1 : 0,
                shaft.sum(),
                pull.sum(),
                winching.sum(),
                held.sum(),
                bands.stream().map(Span::sum).toList(),
                jointNanos,
                jointIsAtMost,
                counts);
    }

    /** Time with the shaft at 60 rpm or more. */
    public double shaftHours() {
        return shaft.hours();
    }

    /** Time in pulls. */
    public double pullHours() {
        return pull.hours();
    }

    /** Time in pulls with the shaft at 60 rpm or more. */
    public double winchingHours() {
        return winching.hours();
    }

    /** Time in pulls with the shaft known to stand still; what is left of the pulls is not known. */
    public double heldHours() {
        return held.hours();
    }

    /** Time in pulls by share of the limit: {@code band} 0 to 0.25, 1 to 0.5, 2 to 0.75, 3 to 1, 4 above. */
    public double bandHours(int band) {
        return bands.get(band).hours();
    }

    /** Hours of the joint at its rating; empty when the rig does not describe drum, joint and shaft. */
    public OptionalDouble jointHours() {
        return jointKnown ? OptionalDouble.of(jointNanos / NANOS_PER_HOUR) : OptionalDouble.empty();
    }

    /** False only when the clutch was known to be engaged in all the time that {@link #jointHours} counts. */
    public boolean jointHoursAreAtMost() {
        return jointIsAtMost || jointHours().isEmpty();
    }

    /** How many findings of {@code kind} there were: {@code pull}, {@code overload}, … */
    public long count(String kind) {
        return counts.getOrDefault(kind, 0L);
    }
}
