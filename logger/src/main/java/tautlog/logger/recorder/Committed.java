package tautlog.logger.recorder;

/** Told by the recorder after each commit, on its thread: returns at once and throws nothing. */
public interface Committed {
    void committed();
}
