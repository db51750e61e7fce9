package tautlog.logger.recorder;

/** What the {@link Backlog} does with what arrives when it is full. */
public enum Overflow {
    /** It is lost, and counted: an instrument does not wait. */
    LOSE,
    /** The reader waits: a replayed or simulated instrument can be held up. */
    WAIT
}
