package tautlog.logger.config;

/** What the owner allows to be taken away when the disk is nearly full. */
public enum KeepChoice {
    /** Nothing: every reading stays. */
    ALL,
    /** The readings of outings in which nothing was found; {@code analyzer/RECORDING.md}, "Thinned". */
    FINDINGS
}
