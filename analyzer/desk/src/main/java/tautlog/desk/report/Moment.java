package tautlog.desk.report;

import java.time.Instant;
import java.util.Optional;

/**
 * A time of a history.
 *
 * @param utc empty while the outing has no clock
 * @param outing the outing's place in the history, from 1
 * @param seconds since the outing's first sample, by the instrument's ticks
 */
public record Moment(Optional<Instant> utc, int outing, double seconds) implements Comparable<Moment> {
    /** By outing, then by time within it: outings stand in the order of time. */
    @Override
    public int compareTo(Moment other) {
        int byOuting = Integer.compare(outing, other.outing);
        return byOuting != 0 ? byOuting : Double.compare(seconds, other.seconds);
    }
}
