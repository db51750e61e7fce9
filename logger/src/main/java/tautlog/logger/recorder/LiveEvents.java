package tautlog.logger.recorder;

import java.util.Optional;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.sample.Evidence;

/** Everything that goes into a recording, in order: outings, their evidence, and what was found in it live. */
public interface LiveEvents extends Evidence {
    /**
     * The next outing begins.
     *
     * @param utcMicros when, in microseconds since 1970; empty while no clock is known
     */
    void begin(OutingStart start, Optional<Long> utcMicros);

    void finding(Finding finding);

    void second(Second second);
}
