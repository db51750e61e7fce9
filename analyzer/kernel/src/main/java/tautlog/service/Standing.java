package tautlog.service;

/** How urgent a task is, the most urgent first. */
public enum Standing {
    /** Past the interval and its tolerance; or the winch or gear was used on after what called for it. */
    OVERDUE,
    /** The interval is reached, or something happened that calls for it. */
    DUE,
    /** The interval is nearly reached. */
    SOON,
    /** Not due by what is known; by what is not known it may be. */
    UNKNOWN,
    /** Not due, as far as is known. */
    LATER;

    Standing worse(Standing other) {
        return compareTo(other) <= 0 ? this : other;
    }
}
