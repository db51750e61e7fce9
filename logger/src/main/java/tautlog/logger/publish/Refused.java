package tautlog.logger.publish;

/** The server is there and says that what it was given is malformed or too much at once: sending it again will not help. */
public final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param words what the server said, short */
    public Refused(String words) {
        super(words);
    }
}
