package tautlog.usage;

import java.util.OptionalLong;

/** Says when a sample of an outing was taken. */
@FunctionalInterface
public interface SampleClock {
    /** An outing without a clock. */
    SampleClock UNKNOWN = number -> OptionalLong.empty();

    /** Microseconds since 1970-01-01T00:00Z at sample {@code number}; empty when no clock is known. */
    OptionalLong utcMicros(long number);
}
