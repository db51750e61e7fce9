package tautlog.desk.incident;

import java.time.Instant;
import tautlog.desk.report.Moment;

/**
 * The time that a report on one moment looks at.
 *
 * @param at the moment asked for
 * @param aroundSeconds how long before and after it, above 0
 */
public record Window(Instant at, double aroundSeconds) {
    /** @throws IllegalArgumentException if {@code aroundSeconds} is not above 0 and finite */
    public Window {
        if (!(aroundSeconds > 0) || !Double.isFinite(aroundSeconds)) {
            throw new IllegalArgumentException("aroundSeconds must be above 0, was " + aroundSeconds);
        }
    }

    public Instant from() {
        return at.minusNanos(nanos());
    }

    public Instant to() {
        return at.plusNanos(nanos());
    }

    private long nanos() {
        return Math.round(aroundSeconds * 1e9);
    }

    /** Whether some of what lasts from {@code start} to {@code end}, both included, lies in it; what has no time does not. */
    boolean holds(Moment start, Moment end) {
        return start.utc().filter(utc -> !utc.isAfter(to())).isPresent()
                && end.utc().filter(utc -> !utc.isBefore(from())).isPresent();
    }

    boolean holds(Moment moment) {
        return holds(moment, moment);
    }
}
