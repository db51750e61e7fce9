package tautlog.sample;

/** Who said where the zero is. */
public enum ZeroSource {
    /** The logger, in proven slack. */
    SLACK,
    /** A person, who held the mark button while the line was slack. */
    BUTTON
}
