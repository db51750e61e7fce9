package tautlog.logger.config;

import java.time.Instant;

/** Where UTC comes from. */
public sealed interface ClockChoice {
    /** Its word in {@code logger.toml}. */
    String word();

    /** This computer's clock; while it is not believed, the satellite receiver's if there is one. */
    record Host() implements ClockChoice {
        @Override
        public String word() {
            return "host";
        }
    }

    /** The satellite receiver of {@code [gps]}, carried on by this computer's counter: for where no network sets the clock. */
    record Gps() implements ClockChoice {
        @Override
        public String word() {
            return "gps";
        }
    }

    /**
     * The instrument's ticks, counted from a given instant: for replays and simulations.
     *
     * @param startUtc the instant of the first sample
     */
    record Device(Instant startUtc) implements ClockChoice {
        @Override
        public String word() {
            return "device";
        }
    }
}
