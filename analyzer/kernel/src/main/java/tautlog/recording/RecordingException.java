package tautlog.recording;

import java.io.IOException;

/** A recording cannot be read, written or trusted; the message names the file, what was found and what to do. */
public final class RecordingException extends IOException {
    private static final long serialVersionUID = 1L;

    /** What else the trouble stands in the way of. */
    public enum Scope {
        /** This file alone, for what it holds or who has it: another one in the same folder would do. */
        THIS_FILE,
        /** Its folder or disk, for all that is known. */
        BEYOND
    }

    private final Scope scope;

    /** Trouble that may reach beyond the file. */
    public RecordingException(String message) {
        super(message);
        scope = Scope.BEYOND;
    }

    /** Trouble that may reach beyond the file. */
    public RecordingException(String message, Throwable cause) {
        this(message, cause, Scope.BEYOND);
    }

    RecordingException(String message, Throwable cause, Scope scope) {
        super(message, cause);
        this.scope = scope;
    }

    private RecordingException(String message, Scope scope) {
        super(message);
        this.scope = scope;
    }

    /** Trouble of one file alone. */
    static RecordingException ofThisFile(String message) {
        return new RecordingException(message, Scope.THIS_FILE);
    }

    public Scope scope() {
        return scope;
    }
}
