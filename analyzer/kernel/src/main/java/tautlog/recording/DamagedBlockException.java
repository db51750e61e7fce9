package tautlog.recording;

/** A stored block is not what was written; the message completes "… is damaged: ". Never leaves this package. */
final class DamagedBlockException extends Exception {
    private static final long serialVersionUID = 1L;

    DamagedBlockException(String message) {
        super(message);
    }

    DamagedBlockException(String message, Throwable cause) {
        super(message, cause);
    }
}
