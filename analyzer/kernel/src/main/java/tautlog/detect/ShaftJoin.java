package tautlog.detect;

import tautlog.rig.Rig;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;

/**
 * Joins shaft readings to samples by tick. Source: {@code FINDINGS.md}, Pull: a reading sits at the latest present sample with a
 * tick at or before its own, and speaks for the numbers after it, to the one where the next reading sits, at most for 1 s.
 *
 * <p>Shaft frames and samples may come in another order than they were taken. A reading waits until a later frame and the next
 * present sample are there; samples wait up to 10 s (or 4,096 samples, if that is more) for the shaft frames of their time, after
 * which a shaft frame counts as missing. At most 65,536 readings wait.
 */
final class ShaftJoin {
    private static final int MOST_WAITING = 1 << 16;

    private final ReadingRing waiting = new ReadingRing();
    private final Seat seat = new Seat();
    private final Frames frames;
    private final CountRing ring;
    private final PullDetector pulls;
    private final StallDetector stalls;
    private final SecondsMaker seconds;
    private final InputLog inputs;
    private final FindingSink sink;
    private final boolean wearIsWanted;
    private final int oneSecond;
    private final long patience;
    private long latestTick = Long.MIN_VALUE;
    private long waitingSince = Long.MIN_VALUE;
    private long settledTick = Long.MIN_VALUE;
    private long knownThrough;
    private long creditedThrough = Long.MIN_VALUE;
    private boolean anyReading;
    private long readingTick;
    private double readingRpm;
    private long readingSeat;
    private long gatheredThrough;
    private long gatheredPlace;
    private int gathered;
    private final Gathered greatest;
    private final ShaftReadings slack = new ShaftReadings();

    ShaftJoin(
            Instrument instrument,
            Thresholds thresholds,
            Rig rig,
            Frames frames,
            CountRing ring,
            PullDetector pulls,
            StallDetector stalls,
            SecondsMaker seconds,
            InputLog inputs,
            FindingSink sink) {
        this.frames = frames;
        this.ring = ring;
        this.pulls = pulls;
        this.stalls = stalls;
        this.seconds = seconds;
        this.inputs = inputs;
        this.sink = sink;
        greatest = new Gathered(ring);
        wearIsWanted = rig.driveline().isPresent();
        oneSecond = thresholds.oneSecond;
        patience = patienceSamples(thresholds) * instrument.tickHz() * 1_000 / instrument.rateMillihertz();
        knownThrough = instrument.pulsesPerRevolution() == 0 ? Long.MAX_VALUE : Long.MIN_VALUE;
        settledTick = instrument.pulsesPerRevolution() == 0 ? Long.MAX_VALUE : Long.MIN_VALUE;
    }

    /** The greatest count of the samples taken up so far, of which the last ones may lie coded. Found out once. */
    private static final class Gathered implements GreatestCount {
        private final CountRing ring;
        private int before;
        private long first;
        private long last;
        private int bound;

        Gathered(CountRing ring) {
            this.ring = ring;
            clear();
        }

        void clear() {
            before = Integer.MIN_VALUE;
            bound = before;
            last = -1;
            first = 0;
        }

        void add(long from, long through) {
            settle();
            first = from;
            last = through;
            bound = Math.max(before, ring.greatestBound(from, through));
        }

        /** Nobody asks within this call: the ring may have forgotten the samples by the next. */
        void settle() {
            bound = exactly();
        }

        @Override
        public int atMost() {
            return bound;
        }

        @Override
        public int exactly() {
            if (first <= last) {
                before = Math.max(before, ring.greatest(first, last));
                first = 0;
                last = -1;
            }
            return before;
        }
    }

    /** How many samples wait for the shaft frames of their time. */
    static int patienceSamples(Thresholds thresholds) {
        return Math.max(thresholds.zeroStretch, 4_096);
    }

    /** False for a shaft frame that comes too late to be joined. */
    boolean isInTime(long tick) {
        return tick > latestTick;
    }

    /** A shaft frame came; {@code rpm} is NaN when it gave no reading. */
    void frame(long tick, double rpm) {
        latestTick = tick;
        waiting.add(tick, rpm);
    }

    /** Shaft frames came, all in time. */
    void frames(ShaftReadings readings) {
        for (int i = 0; i < readings.size(); i++) {
            frame(readings.tick(i), readings.rpm(i));
        }
    }

    /** Samples came, the first of their frame at {@code tick}: shaft frames from long before come no more. */
    void samplesAt(long tick) {
        if (knownThrough == Long.MAX_VALUE) {
            return;
        }
        waitingSince = Math.max(waitingSince, latestTick);
        if (waitingSince == Long.MIN_VALUE) {
            waitingSince = tick;
        }
        if (tick - patience > waitingSince) {
            frame(tick - patience, Double.NaN);
        }
    }

    /** False when one of its shaft frames came too late to be joined, or when so many would make readings settle before their time. */
    boolean isInTime(Passage passage) {
        int n = passage.shaftFrames();
        long latest = latestTick;
        for (int i = 0; i < n; i++) {
            if (passage.shaftTick(i) <= latest) {
                return false;
            }
            latest = passage.shaftTick(i);
        }
        return waiting.size() + n <= MOST_WAITING;
    }

    /** Whether {@link #samplesAt} of frames up to {@code tick} does nothing but remember how far the shaft has come. */
    boolean isPatientTo(long tick) {
        return knownThrough == Long.MAX_VALUE
                || (waitingSince != Long.MIN_VALUE && tick - patience <= Math.max(waitingSince, latestTick));
    }

    /**
     * Settles what can be settled.
     *
     * @param takenThrough number of the last sample that the detectors have taken
     */
    void settle(long takenThrough) {
        while (!waiting.isEmpty() && settleFirst(waiting.size() > MOST_WAITING, takenThrough)) {
            // each call takes one reading out
        }
    }

    /**
     * Settles at once what surely sits among samples of a slack line, one or more of them between any two readings; call before {@link #settle},
     * while no pull is open or waits for the shaft.
     *
     * @param first number of the first of these samples, behind which none came yet that is not taken
     * @param atMost no count of them is greater; below {@code pull_from}
     * @param takenThrough as for {@link #settle}
     */
    void settleSlack(long first, int atMost, long takenThrough) {
        while (!waiting.isEmpty() && !isAmongSlack(first) && settleFirst(false, takenThrough)) {
            // the first that sits there is settled by itself
        }
        if (isAmongSlack(first) && stalls.isAtRest()) {
            slack.clear();
            slack.add(readingTick, readingRpm);
            waiting.copySpeedsBefore(frames.newestTick(), slack);
            if (slack.size() > 1 && tellSlack(atMost)) {
                settledSlack();
            }
        }
    }

    /** Whether what comes after the latest settled reading is told by the samples from {@code first} on, and begins with it. */
    private boolean isAmongSlack(long first) {
        return anyReading && readingSeat >= first - 1 && gatheredThrough == readingSeat;
    }

    private boolean tellSlack(int atMost) {
        return !wearIsWanted
                || (inputs.isSteadyFrom(readingSeat)
                        && sink.slackIntervals(slack, atMost, inputs.clutchFrom(readingSeat, readingSeat)));
    }

    private void settledSlack() {
        int last = slack.size() - 1;
        stalls.unloaded(slack, 1);
        waiting.removeFirst(last);
        settledTick = slack.tick(last);
        frames.seat(settledTick, seat);
        knownThrough = seat.number;
        creditedThrough = Math.max(creditedThrough, seat.number);
        begin(settledTick, slack.rpm(last));
    }

    /** The outing is over. */
    void end(long lastNumber) {
        while (!waiting.isEmpty()) {
            settleFirst(true, lastNumber);
        }
        credit(lastNumber);
        knownThrough = Long.MAX_VALUE;
    }

    /** What the shaft says is known for the numbers up to this one; readings to come sit here or later. */
    long knownThrough() {
        return knownThrough;
    }

    /** Whoever waits for the time since the latest settled reading needs the numbers from this one on. */
    long intervalFirst() {
        return wearIsWanted ? (anyReading ? readingSeat : knownThrough) : Long.MAX_VALUE;
    }

    /** The tick of the latest shaft frame. */
    long latestTick() {
        return latestTick;
    }

    /** Readings up to this tick are settled. */
    long settledTick() {
        return settledTick;
    }

    private boolean settleFirst(boolean force, long takenThrough) {
        long tick = waiting.firstTick();
        boolean placed = frames.anyPresent();
        if (!force && !(placed && frames.isPast(tick))) {
            return false;
        }
        if (placed) {
            frames.seat(tick, seat);
            if (!force && (seat.next == Seat.NONE || seat.next > takenThrough)) {
                return false;
            }
        }
        double rpm = waiting.firstRpm();
        waiting.removeFirst();
        if (placed) {
            settled(tick, rpm);
        }
        return true;
    }

    private void settled(long tick, double rpm) {
        settledTick = tick;
        knownThrough = seat.number;
        credit(seat.number);
        gather();
        if (Double.isNaN(rpm)) {
            greatest.settle();
            return;
        }
        tellInterval(tick);
        begin(tick, rpm);
        seconds.reading(seat.number, rpm);
        stalls.reading(tick, rpm, seat);
    }

    /** The latest reading sits at {@link #seat}: it speaks for what comes. */
    private void begin(long tick, double rpm) {
        anyReading = true;
        readingTick = tick;
        readingRpm = rpm;
        readingSeat = seat.number;
        gatheredThrough = seat.number;
        gatheredPlace = seat.place;
        gathered = 0;
        greatest.clear();
    }

    private void credit(long through) {
        if (anyReading) {
            long first = Math.max(readingSeat, creditedThrough) + 1;
            long last = Math.min(through, readingSeat + oneSecond);
            if (first <= last) {
                pulls.shaftSpeaks(first, last, readingRpm >= ShaftSpeed.TURNING_RPM);
            }
        }
        creditedThrough = Math.max(creditedThrough, through);
    }

    private void tellInterval(long tick) {
        if (!anyReading || !wearIsWanted) {
            return;
        }
        long lastNumber = Math.min(seat.number, readingSeat + oneSecond);
        Known clutch = inputs.clutchFrom(readingSeat, lastNumber);
        sink.shaftInterval(tick - readingTick, readingRpm, gathered, greatest, clutch);
    }

    /** Takes up the samples that the latest reading speaks for, with every shaft frame, before they are forgotten. */
    private void gather() {
        long lastNumber = Math.min(seat.number, readingSeat + oneSecond);
        if (!anyReading || !wearIsWanted || lastNumber <= gatheredThrough) {
            return;
        }
        long lastPlace = lastNumber == seat.number ? seat.place : frames.placeAtOrBefore(lastNumber);
        long first = Math.max(gatheredPlace + 1, ring.oldest());
        long last = Math.min(lastPlace, ring.size() - 1);
        if (first <= last) {
            greatest.add(first, last);
            gathered += (int) (last - first + 1);
        }
        gatheredThrough = lastNumber;
        gatheredPlace = Math.max(gatheredPlace, lastPlace);
    }
}
