package tautlog.logger.port;

import java.io.IOException;

/** A port cannot be opened; the message names it, what is wrong and the next step. */
public final class PortException extends IOException {
    private static final long serialVersionUID = 1L;

    /** Why. */
    public enum Reason {
        NOT_THERE,
        /** It is there, but in use, not allowed, no serial port, or not the only one that it may be. */
        REFUSED
    }

    private final Reason reason;

    public PortException(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
