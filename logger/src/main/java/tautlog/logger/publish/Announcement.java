package tautlog.logger.publish;

/**
 * What holds until the next on the same subject.
 *
 * @param json one object
 */
public record Announcement(Subject subject, String json) {
    /** What it is about. */
    public enum Subject {
        /** What the logger is doing. */
        STATUS,
        /** The last link of a recording's chain, to be kept elsewhere. */
        LINK
    }
}
