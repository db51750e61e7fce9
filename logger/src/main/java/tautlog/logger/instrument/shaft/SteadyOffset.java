package tautlog.logger.instrument.shaft;

/**
 * Ties a counter to this computer's time by what arrives least late: nothing comes before it was sent. The offset follows a
 * counter that runs wrong by up to a ten-thousandth. Not thread-safe.
 */
final class SteadyOffset {
    private static final long NONE = Long.MAX_VALUE;
    /** Chosen: twice what a cheap crystal is off, 50 millionths. */
    private static final long NANOS_PER_DRIFT_NANO = 10_000;

    private final long tickHz;
    private long offsetNanos = NONE;
    private long atNanos;

    SteadyOffset(long tickHz) {
        this.tickHz = tickHz;
    }

    boolean isKnown() {
        return offsetNanos != NONE;
    }

    /** What was sent at {@code tick} arrived at {@code nanos}. */
    void heard(long tick, long nanos) {
        long late = nanos - ownNanos(tick);
        if (isKnown()) {
            offsetNanos += Math.max(0, nanos - atNanos) / NANOS_PER_DRIFT_NANO;
        }
        offsetNanos = Math.min(offsetNanos, late);
        atNanos = nanos;
    }

    /** This computer's time at {@code tick}; only when it {@link #isKnown}. */
    long nanosAt(long tick) {
        return ownNanos(tick) + offsetNanos;
    }

    /** The tick at {@code nanos} of this computer's time; only when it {@link #isKnown}. */
    long tickAt(long nanos) {
        long own = nanos - offsetNanos;
        // whole seconds apart: nanoseconds times ticks would not fit
        long seconds = Math.floorDiv(own, 1_000_000_000L);
        return seconds * tickHz + Math.floorMod(own, 1_000_000_000L) * tickHz / 1_000_000_000L;
    }

    private long ownNanos(long tick) {
        long seconds = Math.floorDiv(tick, tickHz);
        return seconds * 1_000_000_000L + Math.floorMod(tick, tickHz) * 1_000_000_000L / tickHz;
    }
}
