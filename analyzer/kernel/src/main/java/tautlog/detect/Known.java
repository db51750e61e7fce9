package tautlog.detect;

/** An answer that may be missing; unknown is never shown as no. */
public enum Known {
    YES,
    NO,
    UNKNOWN
}
