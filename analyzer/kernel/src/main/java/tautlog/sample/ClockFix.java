package tautlog.sample;

/**
 * One look at the logger's clock: at {@code tick} it said {@code utcMicros}.
 *
 * @param tick of the instrument, unwrapped within its outing
 * @param utcMicros microseconds since 1970-01-01T00:00Z; as late as the line was slow at that moment
 */
public record ClockFix(long tick, long utcMicros) {}
