package tautlog.logger.config;

import java.time.Instant;

/** Where UTC comes from. */
public sealed interface ClockChoice {
    /** This computer's clock. */
    record Host() implements ClockChoice {}

    /**
     * The instrument's ticks, counted from a given instant: for replays and simulations.
     *
     * @param startUtc the instant of the first sample
     */
    record Device(Instant startUtc) implements ClockChoice {}
}
