package tautlog.logger.recorder;

import java.util.Optional;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;

/** Where outings are put; used by the recorder thread only. */
public interface RecordingStore extends AutoCloseable {
    /**
     * Begins the next outing, in the file of its day.
     *
     * @param utcMicros when it began, in microseconds since 1970; empty while no clock is known
     */
    OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException;

    /** The file that is being written; empty before the first outing. */
    Optional<String> file();

    @Override
    void close() throws RecordingException;
}
