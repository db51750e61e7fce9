package tautlog.logger.config;

/** What becomes of the zero while the logger runs. */
public enum ZeroChoice {
    /** It stays where the calibration put it. */
    FIXED,
    /** It follows the slack line, as {@code FINDINGS.md} says under Zero. */
    FOLLOW
}
