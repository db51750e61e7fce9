package tautlog.desk.incident;

import java.time.Instant;
import java.util.Optional;
import tautlog.desk.report.Moment;

/**
 * The time that a report on one moment looks at.
 *
 * @param when the moment asked for
 * @param aroundSeconds how long before and after it, above 0
 */
public record Window(When when, double aroundSeconds) {
    /** @throws IllegalArgumentException if {@code aroundSeconds} is not above 0 and finite */
    public Window {
        if (!(aroundSeconds > 0) || !Double.isFinite(aroundSeconds)) {
            throw new IllegalArgumentException("aroundSeconds must be above 0, was " + aroundSeconds);
        }
    }

    /** The moment by the clock; empty in an outing without one. */
    public Optional<Instant> at() {
        return when.utc();
    }

    /** Whether some of what lasts from {@code start} to {@code end}, both included, lies in it. */
    boolean holds(Moment start, Moment end) {
        return when.holds(start, end, aroundSeconds);
    }

    boolean holds(Moment moment) {
        return holds(moment, moment);
    }

    /** Whether a time by the clock lies in it; none does where the outing has no clock. */
    boolean holds(Instant utc) {
        return holds(new Moment(Optional.of(utc), NO_OUTING, 0));
    }

    /** Outings are counted from 1. */
    private static final int NO_OUTING = 0;
}
