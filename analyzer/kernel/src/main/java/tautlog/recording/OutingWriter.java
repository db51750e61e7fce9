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

    /**
     * The link that the chain would end with if all that is committed were sealed now, in lower-case hexadecimal, 64
     * characters. It covers every committed sample; a copy of the file taken now verifies to it, and so does the file
     * after a power cut. While recording goes on it is replaced by the next.
     */
    String lastLink();

    /** The last link that stands in the file, for good: the one to publish while recording goes on. Same form. */
    String sealedLink();
}
