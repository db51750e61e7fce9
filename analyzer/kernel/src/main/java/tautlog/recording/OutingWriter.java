package tautlog.recording;

import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.sample.Evidence;

/**
 * Appends one outing to a recording. Every call only buffers; {@link #commit} makes durable all that came before it, and
 * seals full blocks. One thread.
 */
public interface OutingWriter extends Evidence {
    void finding(Finding finding);

    void second(Second second);

    /** Makes durable what was appended so far; returns when the disk has it. */
    void commit() throws RecordingException;

    /** The last link of the chain in lower-case hexadecimal, 64 characters. */
    String lastLink();
}
