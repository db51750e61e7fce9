package tautlog.logger.instrument.shaft;

/**
 * Ties a counter to this computer's time by what arrives least late: nothing comes before it was sent. The offset follows a
 * counter that runs wrong by up to a ten-thousandth. When something arrives less late than all before, the offset in use
 * moves there slowly, so that no interval is off by more than a thousandth. Not thread-safe.
 */
final class SteadyOffset {
    private static final long NONE = Long.MAX_VALUE;
    /** Chosen: twice what a cheap crystal is off, 50 millionths. */
    private static final long NANOS_PER_DRIFT_NANO = 10_000;

    private static final long NANOS_PER_MOVED_NANO = 1_000;

    private final long tickHz;
    private long leastNanos = NONE;
    private long offsetNanos;
    private long ownAtNanos;

    SteadyOffset(long tickHz) {
        this.tickHz = tickHz;
    }

    boolean isKnown() {
        return leastNanos != NONE;
    }

    /** What was sent at {@code tick} arrived at {@code nanos}. */
    void heard(long tick, long nanos) {
        long own = ownNanos(tick);
        long late = nanos - own;
        if (!isKnown()) {
            leastNanos = late;
            offsetNanos = late;
            ownAtNanos = own;
            return;
        }
        long since = Math.max(0, own - ownAtNanos);
        ownAtNanos = own;
        leastNanos = Math.min(leastNanos + since / NANOS_PER_DRIFT_NANO, late);
        long most = since / NANOS_PER_MOVED_NANO;
        offsetNanos += Math.max(-most, Math.min(most, leastNanos - offsetNanos));
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
