package tautlog.logger.port;

import java.io.IOException;

/** A port cannot be opened; the message names it, what is wrong and the next step. */
public final class PortException extends IOException {
    private static final long serialVersionUID = 1L;

    public PortException(String message) {
        super(message);
    }
}
