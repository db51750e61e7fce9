package tautlog.logger.publish;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a publisher stands, for people.
 *
 * @param since when it came into this state; empty when off
 * @param why it is away, in words
 * @param lagItems seconds and findings that are recorded and not acknowledged, of the recordings looked into so far
 * @param lagSeconds age of the oldest of them, 0 when there are none; empty when that is not known: before the first look, while
 *     only what waits for a clock is there, or what cannot be read
 * @param lastPosition of what was acknowledged last in this run
 * @param refused by the server for good, set aside in {@code state.db}
 * @param passedOver outings that can never be dated, or whose start cannot be read
 * @param unreadable recordings that could not be read at the last look; looked at again at each scan
 */
public record PublisherState(
        Word word,
        Optional<Instant> since,
        Optional<String> why,
        long lagItems,
        OptionalDouble lagSeconds,
        Optional<String> lastPosition,
        long refused,
        long passedOver,
        long unreadable) {
    public static final PublisherState OFF = new PublisherState(
            Word.OFF, Optional.empty(), Optional.empty(), 0, OptionalDouble.empty(), Optional.empty(), 0, 0, 0);

    /** In one word. */
    public enum Word {
        OFF,
        WAITING,
        CONNECTED,
        AWAY
    }
}
