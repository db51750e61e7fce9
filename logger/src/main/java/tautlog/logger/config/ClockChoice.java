package tautlog.logger.config;

import java.time.Instant;

/** Where UTC comes from. */
public sealed interface ClockChoice {
    /** This computer's clock; while it stands before 2024, the satellite receiver's if there is one. */
    record Host() implements ClockChoice {}

    /** The satellite receiver of {@code [gps]}, carried on by this computer's counter: for where no network sets the clock. */
    record Gps() implements ClockChoice {}

    /**
     * The instrument's ticks, counted from a given instant: for replays and simulations.
     *
     * @param startUtc the instant of the first sample
     */
    record Device(Instant startUtc) implements ClockChoice {}
}
