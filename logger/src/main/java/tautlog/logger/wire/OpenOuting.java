package tautlog.logger.wire;

import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.Tally;

/** One outing that goes on: unwraps ticks, numbers and pulses, and passes on what comes after the last of its kind. */
final class OpenOuting {
    /** Silence, or a step back, beyond which the wrapped counter proves nothing. */
    private static final int LONGEST_SILENCE_TICKS = 1 << 30;

    /** INPUT comes every second; after so long without one clutch and brake are not known. */
    private static final int LONGEST_INPUT_SILENCE_SECONDS = 3;

    private static final long NANOS = 1_000_000_000L;

    private final Instrument instrument;
    private final Evidence evidence;
    private final OutingSink sink;
    private final Switches switches;
    private final long[] pulseTicks = new long[FrameKind.GREATEST_AGES];

    private long newestTick;
    private long helloTick = Long.MIN_VALUE;

    private boolean hasSamples;
    private long tensionTick;
    private long tensionNumber;
    private long nextNumber;

    private boolean hasShaft;
    private long shaftTick;
    private long pulses;
    private long lastPulseTick = Long.MIN_VALUE;

    private long healthTick = Long.MIN_VALUE;
    private long inputTick = Long.MIN_VALUE;
    private boolean hasInput;

    OpenOuting(Instrument instrument, long firstTick, OutingSink sink) {
        this.instrument = instrument;
        this.sink = sink;
        evidence = sink.begin(instrument, firstTick);
        switches = new Switches(evidence, sink);
        newestTick = firstTick;
    }

    Instrument instrument() {
        return instrument;
    }

    /** True when a frame made at {@code wireTick}, {@code sinceNanos} after the last, comes after too long a silence. */
    boolean isSilentBefore(long wireTick, long sinceNanos) {
        int step = (int) (wireTick - newestTick);
        return step > LONGEST_SILENCE_TICKS
                || step < -LONGEST_SILENCE_TICKS
                || sinceNanos > LONGEST_SILENCE_TICKS * NANOS / instrument.tickHz();
    }

    /** Gives the 64-bit tick nearest to the newest one. */
    private long unwrap(long wireTick) {
        return newestTick + (int) (wireTick - newestTick);
    }

    private void heardAt(long tick) {
        newestTick = Math.max(newestTick, tick);
    }

    Verdict hello(long wireTick) {
        long tick = unwrap(wireTick);
        if (tick <= helloTick) {
            return Verdict.REPEATED;
        }
        helloTick = tick;
        heardAt(tick);
        sink.now(tick);
        return Verdict.TAKEN;
    }

    /** True when a frame goes on where the last one left off, in number and in time: the instrument has not restarted. */
    boolean isContinuedBy(long wireTick, long wireNumber) {
        if (!hasSamples || (int) (wireNumber - nextNumber) != 0) {
            return false;
        }
        long nominal = nominalFrameTicks();
        // 2 ticks: both ends of the span are rounded; an eighth: far more than any converter is off
        return Math.abs(unwrap(wireTick) - tensionTick - nominal) <= nominal / 8 + 2;
    }

    Verdict tension(long wireTick, long wireNumber, int flags, int[] counts, int n) {
        long tick = unwrap(wireTick);
        long number = hasSamples ? nextNumber + (int) (wireNumber - nextNumber) : wireNumber;
        if (hasSamples && (number < nextNumber || tick < tensionTick)) {
            return Verdict.UNDECIDED;
        }
        if (!hasSamples) {
            sink.firstSample(tick);
            switches.firstSample(number);
        }
        hasSamples = true;
        tensionTick = tick;
        tensionNumber = number;
        nextNumber = number + n;
        heardAt(tick);
        if (hasInput && tick - inputTick > LONGEST_INPUT_SILENCE_SECONDS * instrument.tickHz()) {
            switches.unheard(tick, number);
        }
        evidence.tension(number, tick, flags & (Evidence.FLAG_END_STOP | Evidence.FLAG_OPEN_BRIDGE), counts, 0, n);
        switches.nextNumber(nextNumber);
        return Verdict.TAKEN;
    }

    Verdict shaft(long wireTick, long wirePulses, int[] ages, int n) {
        long tick = unwrap(wireTick);
        int step = hasShaft ? (int) (wirePulses - pulses) : n;
        if (hasShaft && (tick < shaftTick || step < 0)) {
            return Verdict.UNDECIDED;
        }
        boolean isBeforeLastPulse = n > 0 && tick - ages[0] < lastPulseTick;
        if (hasShaft && (tick == shaftTick || step < n || isBeforeLastPulse)) {
            return Verdict.REPEATED;
        }
        pulses = hasShaft ? pulses + step : wirePulses;
        hasShaft = true;
        shaftTick = tick;
        heardAt(tick);
        for (int i = 0; i < n; i++) {
            pulseTicks[i] = tick - ages[i];
            lastPulseTick = pulseTicks[i];
        }
        evidence.shaft(tick, pulses, pulseTicks, n);
        return Verdict.TAKEN;
    }

    Verdict health(long wireTick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        long tick = unwrap(wireTick);
        if (tick <= healthTick) {
            return tick == healthTick ? Verdict.REPEATED : Verdict.UNDECIDED;
        }
        healthTick = tick;
        heardAt(tick);
        evidence.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        return Verdict.TAKEN;
    }

    Verdict input(long wireTick, int selector, int present, int state) {
        long tick = unwrap(wireTick);
        if (tick < inputTick) {
            return Verdict.UNDECIDED;
        }
        inputTick = tick;
        hasInput = true;
        heardAt(tick);
        switches.stand(tick, selector, present, state);
        return Verdict.TAKEN;
    }

    /** Tells who reads the recording something about the last sample; without one there is nothing to tell of. */
    void mark(String note) {
        if (hasSamples) {
            evidence.mark(nextNumber - 1, note);
        }
    }

    void tally(Tally tally) {
        evidence.tally(tally);
    }

    void end() {
        evidence.end();
        sink.ended(hasSamples ? Math.max(newestTick, tensionTick + nominalFrameTicks()) : newestTick);
    }

    /** How long the last frame's samples take at the nominal rate. */
    private long nominalFrameTicks() {
        return (nextNumber - tensionNumber) * 1_000 * instrument.tickHz() / instrument.rateMillihertz();
    }
}
