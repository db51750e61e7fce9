package tautlog.recording;

import java.io.IOException;

/** A recording cannot be read, written or trusted; the message names the file, what was found and what to do. */
public final class RecordingException extends IOException {
    private static final long serialVersionUID = 1L;

    public RecordingException(String message) {
        super(message);
    }

    public RecordingException(String message, Throwable cause) {
        super(message, cause);
    }
}
