package tautlog.logger.service;

import java.io.IOException;

/** What started the logger, keeps watch over it and starts it again. */
@FunctionalInterface
public interface Supervisor {
    /** The logger has started and records what comes. */
    String READY = "READY=1";

    /** The logger lives; if this is not heard for as long as the unit says, the logger is ended and started again. */
    String ALIVE = "WATCHDOG=1";

    /**
     * Tells it a state, as {@code sd_notify(3)} words it.
     *
     * @throws IOException if it was not told
     */
    void tell(String state) throws IOException, InterruptedException;
}
