package tautlog.logger.live;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.detect.Beacon;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.detect.SlackProof.Found;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.config.Installation;
import tautlog.logger.gps.GpsFix.Place;
import tautlog.logger.live.HookupInForce.Choice;
import tautlog.logger.recorder.LiveEvents;
import tautlog.logger.wire.BeaconState;
import tautlog.sample.Calibration;
import tautlog.sample.ClockFix;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.OutingClock;
import tautlog.sample.Position;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;
import tautlog.sample.Tally;
import tautlog.sample.ZeroShift;
import tautlog.sample.ZeroSource;

/**
 * One outing: every call goes to the recording first and to the detectors then, and what these find follows it. Allocates
 * nothing per sample. Reader thread only.
 */
final class LiveOuting implements Evidence, FindingSink {
    private static final Logger LOG = LoggerFactory.getLogger(LiveOuting.class);

    private static final BeaconState[] STATES = {
        BeaconState.CLEAR, BeaconState.CAUTION, BeaconState.OVER, BeaconState.FAULT
    };

    private static final long SILENT_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final Instrument instrument;
    private final Calibration calibration;
    private final LiveEvents events;
    private final HookupInForce hookups;
    private final List<String> notesWaiting;
    private final BeaconLamp lamp;
    private final Detection detection;
    private final Beacon beacon;
    private final SampleTicks sampleTicks;
    private final ZeroShift tension;
    private final ZeroFollower zero;

    private boolean hookupTold;
    private long samples;
    private long lastNumber;
    private long lastSampleTick;
    private int lastCounts;
    private int greatestCounts = Integer.MIN_VALUE;
    private long nowNanos;
    private long lastSampleNanos;
    private Optional<ClockFix> fix = Optional.empty();
    private Tally tally = Tally.NONE;
    private long lostByInstrument;
    private OptionalDouble shaftRpm = OptionalDouble.empty();

    /** @param notesWaiting left before there was a sample; put at the first one, and cleared */
    LiveOuting(
            Instrument instrument,
            Installation installation,
            LiveEvents events,
            HookupInForce hookups,
            List<String> notesWaiting,
            BeaconLamp lamp) {
        this.notesWaiting = notesWaiting;
        this.instrument = instrument;
        this.events = events;
        this.hookups = hookups;
        this.lamp = lamp;
        calibration = installation.lineCalibration();
        detection = new Detection(instrument, installation.rig(), calibration, this);
        beacon = new Beacon(instrument, installation.rig(), calibration);
        sampleTicks = new SampleTicks(instrument);
        tension = new ZeroShift(instrument, new Tension());
        zero = new ZeroFollower(
                instrument,
                installation.rig(),
                calibration,
                installation.config().zero());
    }

    void arriving(long nanos) {
        nowNanos = nanos;
    }

    long tickHz() {
        return instrument.tickHz();
    }

    boolean hasSamples() {
        return samples > 0;
    }

    /** The number of the sample that comes next, if no gap comes before it. */
    long nextNumber() {
        return lastNumber + 1;
    }

    Optional<ClockFix> fix() {
        return fix;
    }

    private long silentNanos(long nanos) {
        return nanos - lastSampleNanos;
    }

    /** Whether the last sample is too old to say how things are. */
    boolean isSilent() {
        return silentNanos(nowNanos) > SILENT_NANOS;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (samples == 0) {
            tellWhatWaits(number);
        }
        events.tension(number, tick, flags, counts, from, n);
        tension.tension(number, tick, flags, counts, from, n);
        follow(number + n);
    }

    private void follow(long nextNumber) {
        Optional<Found> move = zero.move();
        if (move.isPresent()) {
            zero(nextNumber, move.get().shiftCounts(), move.get().by());
        }
        if (zero.hasRefused()) {
            LOG.warn("the mark button was held, but the zero is not set: the line must be slack and at rest, and within"
                    + " [detect] drift of the calibration's own zero");
        }
    }

    /** What detectors, lamp and screens are told: counts of which a moved zero has been taken off. */
    private final class Tension extends QuietEvidence {
        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            detection.tension(number, tick, flags, counts, from, n);
            lamp.sensor(STATES[beacon.level(flags, counts, from, n)], nowNanos);
            zero.tension(number, tick, flags, counts, from, n);
            remember(number, tick, counts, from, n);
        }

        @Override
        public void zero(long atNumber, int shiftCounts, ZeroSource by) {
            zero.zero(atNumber, shiftCounts, by);
        }
    }

    private void tellWhatWaits(long number) {
        if (!hookupTold) {
            tellHookup(number, hookups.choice());
        }
        notesWaiting.forEach(note -> mark(number, note));
        notesWaiting.clear();
    }

    private void remember(long number, long tick, int[] counts, int from, int n) {
        sampleTicks.frame(number, tick, n);
        samples += n;
        lastNumber = number + n - 1;
        lastSampleTick = sampleTicks.tickOf(n - 1);
        lastSampleNanos = nowNanos;
        lastCounts = counts[from + n - 1];
        for (int i = from; i < from + n; i++) {
            greatestCounts = Math.max(greatestCounts, counts[i]);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        events.shaft(tick, pulses, pulseTicks, n);
        detection.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        events.input(atNumber, tick, selector, present, state);
        detection.input(atNumber, tick, selector, present, state);
        zero.input(atNumber, tick, selector, present, state);
    }

    /** Says that another hookup is on from {@code atNumber}. */
    void tellHookup(long atNumber, Choice choice) {
        hookup(atNumber, choice.hookup().id(), choice.by());
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        hookupTold = true;
        events.hookup(atNumber, id, by);
        detection.hookup(atNumber, id, by);
        beacon.hookup(id);
    }

    @Override
    public void mark(long atNumber, String note) {
        events.mark(atNumber, note);
        detection.mark(atNumber, note);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        lostByInstrument = lost;
        events.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        detection.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        fix = Optional.of(new ClockFix(tick, utcMicros));
        events.clock(tick, utcMicros);
        detection.clock(tick, utcMicros);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        events.zero(atNumber, shiftCounts, by);
        tension.zero(atNumber, shiftCounts, by);
    }

    @Override
    public void position(Position position) {
        events.position(position);
    }

    /** The receiver told where it is. Said of the latest sample; while that is old, it is not kept. */
    void place(Place place) {
        if (!isSilent()) {
            position(new Position(
                    lastSampleTick,
                    place.latitudeE7(),
                    place.longitudeE7(),
                    place.satellites(),
                    place.dilutionTenths()));
        }
    }

    @Override
    public void tally(Tally newTally) {
        tally = newTally;
        events.tally(newTally);
        detection.tally(newTally);
    }

    @Override
    public void end() {
        detection.end(); // what it finds now still belongs to the outing
        events.end();
    }

    @Override
    public void finding(Finding finding) {
        events.finding(finding);
    }

    @Override
    public void second(Second second) {
        events.second(second);
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        // counted at the desk
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        shaftRpm = OptionalDouble.of(rpm);
    }

    /** How the outing stands; the greatest tension begins anew. */
    LiveReadings readings() {
        Choice choice = hookups.choice();
        if (samples == 0) {
            return LiveReadings.none(instrument.id(), choice, tally);
        }
        OptionalDouble greatest = greatestCounts == Integer.MIN_VALUE
                ? OptionalDouble.empty()
                : OptionalDouble.of(calibration.newtons(greatestCounts));
        greatestCounts = Integer.MIN_VALUE;
        return new LiveReadings(
                instrument.id(),
                samples,
                Optional.of(lastNumber),
                OutingClock.of(fix.stream().toList(), instrument.tickHz()).instant(lastSampleTick),
                OptionalInt.of(lastCounts),
                OptionalDouble.of(silentNanos(nowNanos) / 1e9),
                isSilent() ? OptionalDouble.empty() : OptionalDouble.of(calibration.newtons(lastCounts)),
                greatest,
                isSilent() ? OptionalDouble.empty() : shaftRpm,
                choice.hookup(),
                choice.by(),
                tally,
                lostByInstrument,
                zeroState());
    }

    private LiveReadings.Zero zeroState() {
        double own = calibration.zeroCounts().doubleValue();
        return new LiveReadings.Zero(zero.isProven(), calibration.newtons(own + zero.shiftCounts()));
    }
}
