package tautlog.logger.instrument;

import java.util.Optional;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.wire.LineCounts;

/** Understands what one kind of instrument sends. The reader thread calls; the outing that it tells of is told in there. */
public interface InstrumentFeed {
    /** Another line was opened: what was begun on the one before is forgotten. */
    void opened(InstrumentLine line);

    /**
     * Bytes came, or time passed.
     *
     * @param nowNanos when, of a clock that never goes back
     * @param n how many of {@code bytes}; 0 when none came
     */
    void bytes(long nowNanos, byte[] bytes, int n);

    /** The line is gone; {@link #bytes} may be called with none until there is another. */
    void gone();

    /** What came to no use so far in the outing that is on, or since the last one ended. */
    LineCounts counts();

    /** Why what comes is not believed yet and what to do, in words; empty when it is. Any thread. */
    default Optional<String> unproven() {
        return Optional.empty();
    }

    /** Nothing more comes: the outing ends. */
    void end();
}
