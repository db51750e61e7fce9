package tautlog.recording;

import java.nio.file.Path;

/** Writes a recording: one winch, one day, one or more outings. One thread. */
public final class RecordingWriter implements AutoCloseable {
    private RecordingWriter() {}

    /**
     * Opens {@code file}, making it when it is not there. An outing that a power cut left open stays marked so.
     *
     * @throws RecordingException if the file is no recording, is newer than this program, is damaged or locked
     */
    public static RecordingWriter open(Path file, String winch) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    /** Begins the next outing. */
    public OutingWriter begin(OutingStart start) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    @Override
    public void close() throws RecordingException {}
}
