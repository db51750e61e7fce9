package tautlog.desk.cli;

/** The command line asks for something that cannot be; the message says what can. */
final class UsageException extends Exception {
    private static final long serialVersionUID = 1L;

    UsageException(String message) {
        super(message);
    }
}
