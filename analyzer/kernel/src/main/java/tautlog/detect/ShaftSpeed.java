package tautlog.detect;

import tautlog.sample.Instrument;

/**
 * Turns pulses into shaft speed. Source: {@code firmware-notes/wire.md}: 60 · tick_hz / (t_m − t_(m − ppr)) over one whole
 * revolution, t_m the latest pulse; but never more than 60 · tick_hz / (ppr · (t − t_m)), and 0 when t − t_m is more than 1 s.
 */
public final class ShaftSpeed {
    /** Of the shaft: turning from here on. Source: {@code FINDINGS.md}, Hours. */
    static final double TURNING_RPM = 60;

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
        if (!started || pulses - lastPulses != n) {
            started = true;
            known = 0;
            trainBegan = tick;
        }
        lastPulses = pulses;
        // of more pulses than a revolution has only the last matter
        for (int i = Math.max(0, n - pulseTicks.length); i < n; i++) {
            take(ticks[from + i]);
        }
        if (anyReading && (tick - lastReading) * 20 < tickHz) {
            return Double.NaN;
        }
        double speed = speedAt(tick);
        if (!Double.isNaN(speed)) {
            anyReading = true;
            lastReading = tick;
        }
        return speed;
    }

    private void take(long pulseTick) {
        pulseTicks[next] = pulseTick;
        next = next + 1 < pulseTicks.length ? next + 1 : 0;
        known = Math.min(known + 1, pulseTicks.length);
    }

    private double speedAt(long tick) {
        long latest = known > 0 ? pulseTicks[next > 0 ? next - 1 : pulsesPerRevolution] : trainBegan;
        if (tick - latest > tickHz) {
            return 0;
        }
        if (known <= pulsesPerRevolution) {
            return Double.NaN;
        }
        long revolution = latest - pulseTicks[next];
        if (revolution <= 0) {
            return Double.NaN;
        }
        // the lesser of two speeds is the one with the longer revolution
        return 60.0 * tickHz / Math.max(revolution, pulsesPerRevolution * (tick - latest));
    }
}
