package tautlog.detect;

import tautlog.sample.Instrument;
import tautlog.sample.Passage;

/**
 * Turns pulses into shaft speed. Source: {@code firmware-notes/wire.md}: 60 · tick_hz / (t_m − t_(m − ppr)) over one whole
 * revolution, t_m the latest pulse; but never more than 60 · tick_hz / (ppr · (t − t_m)), and 0 when t − t_m is more than 1 s.
 */
public final class ShaftSpeed {
    /** Of the shaft: turning from here on. Source: {@code FINDINGS.md}, Hours. */
    static final double TURNING_RPM = 60;

    /** At most so many readings a second. */
    static final int READINGS_PER_SECOND = 20;

    private final long tickHz;
    private final int pulsesPerRevolution;
    private final long[] pulseTicks;
    private int known;
    private int next;
    private boolean started;
    private long lastPulses;
    private long trainBegan;
    private boolean anyReading;
    private long lastReading;

    /** Of one outing; pulses per revolution may be 0, then no frame gives a reading. */
    public ShaftSpeed(Instrument instrument) {
        tickHz = instrument.tickHz();
        pulsesPerRevolution = instrument.pulsesPerRevolution();
        pulseTicks = new long[pulsesPerRevolution + 1];
    }

    /** Takes a shaft frame; the speed at its tick in revolutions per minute, or NaN when the frame gives no reading. */
    public double frame(long tick, long pulses, long[] ticks, int n) {
        return frame(tick, pulses, ticks, 0, n);
    }

    /** The same, of pulses from {@code ticks[from]} on. */
    double frame(long tick, long pulses, long[] ticks, int from, int n) {
        if (!goesOn(pulses, n)) {
            begin(tick);
        }
        lastPulses = pulses;
        // of more pulses than a revolution has only the last matter
        take(ticks, from + Math.max(0, n - pulseTicks.length), from + n);
        return reading(tick);
    }

    /** The same of each shaft frame of {@code passage}; adds one reading for each to {@code into}, NaN where there is none. */
    void passage(Passage passage, ShaftReadings into) {
        long[] ticks = passage.pulseTicks();
        int n = passage.shaftFrames();
        int train = n > 0 ? passage.pulsesFrom(0) : 0;
        int end = train;
        for (int i = 0; i < n; i++) {
            long tick = passage.shaftTick(i);
            int from = end;
            end += passage.pulsesIn(i);
            if (!goesOn(passage.pulses(i), end - from)) {
                begin(tick);
                train = from;
            }
            lastPulses = passage.pulses(i);
            if (end - train <= pulsesPerRevolution) {
                take(ticks, from, end);
                into.add(tick, reading(tick));
            } else {
                known = pulseTicks.length;
                into.add(tick, reading(tick, ticks[end - 1], ticks[end - pulseTicks.length]));
            }
        }
        if (end - train > pulsesPerRevolution) {
            take(ticks, end - pulseTicks.length, end);
        }
    }

    private boolean goesOn(long pulses, int n) {
        return started && pulses - lastPulses == n;
    }

    private void begin(long tick) {
        started = true;
        known = 0;
        trainBegan = tick;
    }

    private void take(long[] ticks, int from, int end) {
        for (int i = from; i < end; i++) {
            pulseTicks[next] = ticks[i];
            next = next + 1 < pulseTicks.length ? next + 1 : 0;
        }
        known = Math.min(known + end - from, pulseTicks.length);
    }

    private double reading(long tick) {
        long latest = known > 0 ? pulseTicks[next > 0 ? next - 1 : pulsesPerRevolution] : trainBegan;
        return reading(tick, latest, pulseTicks[next]);
    }

    /**
     * @param latest pulse before {@code tick}; where the train began when there is none
     * @param revolutionBegan the pulse one revolution before it, if it is known
     */
    private double reading(long tick, long latest, long revolutionBegan) {
        if (anyReading && (tick - lastReading) * READINGS_PER_SECOND < tickHz) {
            return Double.NaN;
        }
        double speed = speedAt(tick, latest, revolutionBegan);
        if (!Double.isNaN(speed)) {
            anyReading = true;
            lastReading = tick;
        }
        return speed;
    }

    private double speedAt(long tick, long latest, long revolutionBegan) {
        if (tick - latest > tickHz) {
            return 0;
        }
        if (known <= pulsesPerRevolution) {
            return Double.NaN;
        }
        long revolution = latest - revolutionBegan;
        if (revolution <= 0) {
            return Double.NaN;
        }
        // the lesser of two speeds is the one with the longer revolution
        return 60.0 * tickHz / Math.max(revolution, pulsesPerRevolution * (tick - latest));
    }
}
