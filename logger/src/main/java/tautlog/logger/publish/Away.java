package tautlog.logger.publish;

import java.io.IOException;

/** The server cannot be reached, does not answer, or does not let us in: to be tried again for ever. */
public final class Away extends IOException {
    private static final long serialVersionUID = 1L;
    private final long waitMillis;

    /** @param words for a person, with what to look at; never a secret */
    public Away(String words) {
        this(words, 0);
    }

    /** @param waitMillis that the server asked to be left alone for; 0 when it did not */
    public Away(String words, long waitMillis) {
        super(words);
        this.waitMillis = waitMillis;
    }

    long waitMillis() {
        return waitMillis;
    }
}
