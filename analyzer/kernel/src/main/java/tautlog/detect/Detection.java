package tautlog.detect;

import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.QuietEvidence;
import tautlog.sample.StoredCounts;

/**
 * Runs every detector of {@code FINDINGS.md} over one outing: one pass, the same live and later.
 *
 * <p>Takes the evidence apart: frames become runs of present samples, cut where the hookup changes and where a second ends, with
 * the gaps between them; pulses become shaft readings and are joined to the samples by tick, so that the order in which shaft
 * frames and samples come does not matter (up to 10 s). One thread. Allocates per frame, finding and second at most, never per
 * sample. Marks, health, clock fixes, positions and losses change no finding, nor does a moved zero: the counts that come here have had
 * it taken off ({@link tautlog.sample.ZeroShift}).
 *
 * <p>Most of the cost of a small frame is per call. So the samples of contiguous frames wait in the ring until they fill a run, or
 * until a frame leaves {@link Quiet}, the band in which nothing can be told: no finding of the tension comes later for it, a second
 * or a stall's end by a run at most.
 *
 * <p>{@link #tension} does it all. A replay that has the samples in runs calls {@link #frame} and {@link #run} instead, for the whole
 * outing: the same is found, most of the cost of frames is saved. Where no event acts it gives seconds at once by {@link #passage}.
 */
public final class Detection extends QuietEvidence {
    private final FindingSink sink;
    private final LimitsByHookup hookups;
    private final InputLog inputs = new InputLog();
    private final Frames frames;
    private final CountRing ring;
    /** The samples that came last. */
    private final Piece piece = new Piece();
    /** Samples that came and were not yet given to the detectors: they lie in the ring. */
    private final Run run;

    private final StoredFeed stored;
    private final Quiet quiet = new Quiet();
    private boolean quietIsKnown;
    /** How many samples fit into {@link #run}. */
    private int room;

    private final long oneSecondTicks;
    private final ShaftSpeed shaftSpeed;
    private final ShaftJoin shaftJoin;
    private final boolean hasShaftSensor;
    private final Thresholds thresholds;
    private final boolean isCurved;
    private final PullDetector pulls;
    private final OverloadDetector overloads;
    private final JoltDetector jolts;
    private final ShockDetector shocks;
    private final DropDetector drops;
    private final StallDetector stalls;
    private final EndStopDetector endStops;
    private final SpikeDetector spikes;
    private final ZeroDetector zeros;
    private final SecondsMaker seconds;
    private final Detector[] detectors;
    private final FrameArrivals arrivals;
    private final ShaftReadings readings = new ShaftReadings();
    /** Samples were taken that are not yet settled, the first of them with this number. */
    private boolean unsettled;

    private long unsettledNumber;
    private long lastTaken;

    public Detection(Instrument instrument, Rig rig, Calibration calibration, FindingSink sink) {
        this.sink = sink;
        thresholds = new Thresholds(instrument, rig, calibration);
        isCurved = thresholds.relations.areCurved();
        hookups = new LimitsByHookup(rig, calibration);
        HookupLimits limits = hookups.inForce();
        frames = new Frames(instrument);
        ring = new CountRing(2 * ShaftJoin.patienceSamples(thresholds) + longestWindow(thresholds));
        run = new Run(ring, limits);
        oneSecondTicks = instrument.tickHz();
        pulls = new PullDetector(thresholds, limits, sink);
        overloads = new OverloadDetector(thresholds, limits, pulls, sink);
        jolts = new JoltDetector(thresholds, limits, ring, sink);
        shocks = new ShockDetector(thresholds, limits, pulls, jolts, sink);
        drops = new DropDetector(instrument, thresholds, ring, inputs, sink);
        stalls = new StallDetector(instrument, thresholds, ring, pulls, sink);
        endStops = new EndStopDetector(instrument.fullScale(), sink);
        spikes = new SpikeDetector(thresholds, ring, sink);
        zeros = new ZeroDetector(thresholds, ring, sink);
        seconds = new SecondsMaker(instrument, sink);
        shaftSpeed = new ShaftSpeed(instrument);
        shaftJoin = new ShaftJoin(instrument, thresholds, rig, frames, ring, pulls, stalls, seconds, inputs, sink);
        hasShaftSensor = instrument.pulsesPerRevolution() > 0;
        // in this order: a shock is decided before the jolts are sought that it may hide, and told to the pulls
        // when they have taken the same samples
        detectors = new Detector[] {pulls, overloads, shocks, jolts, drops, endStops, spikes, zeros, seconds};
        arrivals = new FrameArrivals(thresholds, ring, frames, seconds, sink, detectors);
        stored = new StoredFeed(ring, run, hookups, seconds, this::giveRun);
    }

    private static int longestWindow(Thresholds thresholds) {
        return 2 * (Math.max(thresholds.joltWithin, thresholds.dropWithin) + Passage.MOST);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        boolean isPresent = (flags & FLAG_OPEN_BRIDGE) == 0;
        if (!isPresent || number != arrivals.lastPresent() + 1 || run.n + n > room) {
            settle();
        }
        arrivals.frame(number, tick, isPresent, n);
        for (int k = 0; isPresent && k < n; k += Run.MOST) {
            take(number + k, counts, from + k, Math.min(Run.MOST, n - k));
        }
        endFrame();
    }

    /**
     * A frame begins whose samples come by {@link #run}; parameters as in {@link #tension}. What comes by numbers must be told before the
     * samples, as in a replay by frames.
     */
    public void frame(long number, long tick, int flags, int n) {
        arrivals.frame(number, tick, (flags & FLAG_OPEN_BRIDGE) == 0, n);
        shaftJoin.samplesAt(tick);
        if (!arrivals.isPresent()) {
            settle();
        }
    }

    /**
     * The next present samples, of frames that were begun.
     *
     * @param number of the first
     */
    public void run(long number, StoredCounts counts) {
        stored.run(number, counts);
        taken(number, counts.size());
        settle();
    }

    /**
     * Writes counts of the last run or passage to the beginning of {@code to}, so that nobody decodes them a second time.
     *
     * @param back how many samples before the next one they begin
     * @param n how many
     */
    public void copyBack(int back, int n, int[] to) {
        ring.copyTo(ring.size() - back, n, to);
    }

    /**
     * Takes frames, samples and shaft frames of some seconds at once. The same is found as by the other calls: shaft frames may come some
     * seconds before their samples, and a run may be of any length. Of a slack line with nothing under way the detectors are given one run.
     *
     * @return false where that cannot be: then nothing was taken, it must come by {@link #frame}, {@link #run} and {@link #shaft}
     */
    public boolean passage(Passage passage) {
        if (seconds.areWanted() || !goesOn(passage)) {
            return false;
        }
        if (hasShaftSensor) {
            read(passage);
        }
        boolean isClose = arrivals.passage(passage);
        shaftJoin.samplesAt(arrivals.tick());
        boolean isQuiet = passage.greatest() < thresholds.slackBelow && isAtRest();
        stored.passage(passage, isQuiet);
        taken(passage.first(), passage.samples());
        if (isQuiet && isClose && passage.greatest() < thresholds.pullFrom) {
            shaftJoin.settleSlack(passage.first(), passage.greatest(), lastTaken);
        }
        settle();
        return true;
    }

    private void read(Passage passage) {
        readings.clear();
        shaftSpeed.passage(passage, readings);
        sink.shaftReadings(readings);
        drops.readings(readings);
        shaftJoin.frames(readings);
    }

    /** Nothing is under way for which a detector would have to look at each sample of a long run: that would cost what it saves. */
    private boolean isAtRest() {
        return !pulls.areOpen() && !shocks.isUndecided() && !waitsForShaft();
    }

    /** Whether the passage follows what came with nothing between, under one hookup and with a shaft that speaks. */
    private boolean goesOn(Passage passage) {
        int last = passage.frames() - 1;
        return run.n == 0
                && passage.first() == lastTaken + 1
                && arrivals.goesOn(passage)
                && (last < 0 || shaftJoin.isPatientTo(passage.frameTick(last)))
                && shaftJoin.isInTime(passage)
                && hookups.cut(passage.first(), passage.samples()) == passage.samples();
    }

    private void take(long number, int[] counts, int from, int n) {
        for (int k = 0; k < n; k += piece.n) {
            makeRoom(number + k);
            piece.set(number + k, counts, from + k, Math.min(n - k, room - run.n));
            ring.append(piece);
            run.add(piece);
            taken(piece.first, piece.n);
        }
    }

    /** Makes sure that one sample more can join the run that waits: one second, one hookup, one piece of the ring. */
    private void makeRoom(long number) {
        if (run.n == room) {
            giveRun();
        }
        if (run.n == 0) {
            room = ring.cut(seconds.cut(number, hookups.cut(number, Run.MOST)));
            run.begin(number, hookups.inForce());
        }
    }

    private void taken(long first, int n) {
        lastTaken = first + n - 1;
        if (!unsettled) {
            unsettled = true;
            unsettledNumber = first;
        }
    }

    /** Ends the frame: what can now be decided is told. */
    private void endFrame() {
        shaftJoin.samplesAt(arrivals.tick());
        if (!arrivals.isPresent() || isFull() || mayTell()) {
            settle();
        }
    }

    /** Another frame like this one would not fit. */
    private boolean isFull() {
        return run.n + arrivals.length() > room;
    }

    /** Whether what waits may be told at once. */
    private boolean mayTell() {
        if (!quietIsKnown) {
            quietIsKnown = true;
            quiet.openWide();
            pulls.narrow(quiet, run);
            overloads.narrow(quiet, run);
            shocks.narrow(quiet, run);
            jolts.narrow(quiet, run);
            drops.narrow(quiet, run);
            endStops.narrow(quiet, run);
            spikes.narrow(quiet, run);
            zeros.narrow(quiet, run);
        }
        return waitsForShaft() || !quiet.holds(run);
    }

    /** Gives the run that waits to the detectors, and settles what this decides. */
    void settle() {
        giveRun();
        if (unsettled) {
            unsettled = false;
            pulls.frameTaken(unsettledNumber, frames);
            drops.frameTaken(unsettledNumber, frames.frameTickOf(unsettledNumber), frames);
        }
        shaftJoin.settle(lastTaken);
        stalls.settle(shaftJoin.knownThrough());
        report(hasShaftSensor ? shaftJoin.latestTick() : Long.MAX_VALUE);
        long oldest = Math.min(arrivals.number(), lastTaken) - thresholds.dropWithin;
        frames.forgetBefore(shaftJoin.settledTick(), oldest);
        inputs.forgetBefore(Math.min(oldest, shaftJoin.intervalFirst()));
    }

    private void giveRun() {
        if (run.n > 0) {
            if (isCurved) {
                run.square();
            }
            for (Detector detector : detectors) {
                detector.run(run);
            }
            run.n = 0;
            quietIsKnown = false;
        }
        room = 0;
    }

    private void report(long shaftTick) {
        pulls.report(shocks.shocksKnownBelow(), shaftJoin.knownThrough());
        drops.report(shaftTick);
        seconds.report(shaftJoin.knownThrough());
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        if (!hasShaftSensor) {
            return;
        }
        boolean isInTime = read(tick, pulses, pulseTicks, n);
        if (isInTime && (waitsForShaft() || tick - arrivals.tick() > oneSecondTicks)) {
            settle();
        }
    }

    /** Takes a shaft frame; false when it came too late to be joined. */
    private boolean read(long tick, long pulses, long[] pulseTicks, int n) {
        double rpm = shaftSpeed.frame(tick, pulses, pulseTicks, n);
        boolean isReading = !Double.isNaN(rpm);
        if (isReading) {
            sink.shaftReading(tick, rpm);
        }
        if (!shaftJoin.isInTime(tick)) {
            return false;
        }
        if (isReading) {
            drops.reading(tick, rpm);
        }
        shaftJoin.frame(tick, rpm);
        return true;
    }

    /** Whether something is decided but for what the shaft does. */
    private boolean waitsForShaft() {
        return stalls.isOpen() || pulls.areWaiting() || drops.areWaiting();
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        inputs.add(atNumber, present, state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        settle();
        hookups.change(atNumber, id, by);
    }

    @Override
    public void end() {
        settle();
        arrivals.end();
        for (Detector detector : detectors) {
            detector.end();
        }
        shaftJoin.end(arrivals.lastPresent());
        stalls.settle(Long.MAX_VALUE);
        report(Long.MAX_VALUE);
    }
}
