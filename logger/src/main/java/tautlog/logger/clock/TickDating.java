package tautlog.logger.clock;

import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/** Makes the clock fixes of outings, one after the other; outside an outing nothing happens. One thread. */
public interface TickDating {
    /** An outing begins; its fixes go to {@code evidence}. */
    void begin(Instrument instrument, Evidence evidence);

    /** The outing's first sample was taken at {@code tick}. */
    void firstSample(long tick);

    /**
     * The instrument's counter stood at {@code tick} when the host's clock said {@code utcMicros}.
     *
     * @param utcMicros microseconds since 1970-01-01T00:00Z
     */
    void now(long tick, long utcMicros);

    /** The host's clock was set, or came to be known, before the next {@link #now}. */
    void stepped();

    /** The outing is over; nothing was heard of it after {@code lastTick}. */
    void ended(long lastTick);
}
