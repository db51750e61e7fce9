package tautlog.recording;

import java.nio.file.Path;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.sample.Evidence;

/** Reads a recording, also while it is being written. */
public final class Recording implements AutoCloseable {
    private Recording() {}

    /** @throws RecordingException if the file is no recording, is newer than this program, or is damaged beyond reading */
    public static Recording open(Path file) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    public String winch() {
        throw new UnsupportedOperationException();
    }

    public List<Outing> outings() throws RecordingException {
        throw new UnsupportedOperationException();
    }

    /** Makes the calls that the live run made, joined by tick and number; blocks are checked (CRC-32C) as they are read. */
    public void replay(Outing outing, Evidence sink) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    /** What was said live, in the order of committing. */
    public List<Finding> findings(Outing outing) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    public List<Second> seconds(Outing outing) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    /** The tick at which sample {@code number} was taken, exact. */
    public long tickOf(Outing outing, long number) throws RecordingException {
        throw new UnsupportedOperationException();
    }

    @Override
    public void close() throws RecordingException {}
}
