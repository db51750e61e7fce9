package tautlog.service;

import java.math.BigDecimal;
import java.util.List;

/**
 * How a task stands on one winch.
 *
 * @param standing by what is known
 * @param mayBe by what is not known, too: as urgent as {@code standing} or more
 * @param meters of its intervals, in the order of {@link Meter}
 * @param calls happenings since, of the kind that calls for it
 * @param doubts why something is not known, whole sentences
 */
public record TaskState(
        Task task,
        String winch,
        Since since,
        Standing standing,
        Standing mayBe,
        List<Used> meters,
        List<Happening> calls,
        List<String> doubts) {
    public TaskState {
        meters = List.copyOf(meters);
        calls = List.copyOf(calls);
        doubts = List.copyOf(doubts);
    }

    /** How much of an interval is used up. */
    public record Used(Meter meter, BigDecimal interval, Amount amount) {
        /** The figure that is held against the interval. */
        public double deciding() {
            return meter.deciding(amount);
        }
    }
}
