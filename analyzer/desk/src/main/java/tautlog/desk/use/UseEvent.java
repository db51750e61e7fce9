package tautlog.desk.use;

import java.time.Instant;
import java.util.Optional;

/**
 * A finding that may call for service: an overload, shock, jolt, drop or stall.
 *
 * @param kind as {@link tautlog.detect.Finding#kind}
 * @param number the sample at which it starts
 * @param start empty while the outing has no clock
 */
public record UseEvent(String kind, long number, Optional<Instant> start) {}
