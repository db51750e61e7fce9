package tautlog.desk.report;

import java.time.Instant;
import java.util.Optional;

/**
 * A time of a history.
 *
 * @param utc empty while the outing has no clock
 * @param outing the outing's place in the history, from 1
 * @param seconds since the outing's first sample, by the instrument's ticks
 * @param place of the winch then; empty when no receiver told one in the 10 s before
 */
public record Moment(Optional<Instant> utc, int outing, double seconds, Optional<Place> place)
        implements Comparable<Moment> {
    /** Somewhere. */
    public Moment(Optional<Instant> utc, int outing, double seconds) {
        this(utc, outing, seconds, Optional.empty());
    }

    /** By outing, then by time within it: outings stand in the order of time. */
    @Override
    public int compareTo(Moment other) {
        int byOuting = Integer.compare(outing, other.outing);
        return byOuting != 0 ? byOuting : Double.compare(seconds, other.seconds);
    }
}
