package tautlog.logger.wire;

/** What an outing says to a frame that is offered to it. */
enum Verdict {
    /** It belongs here and has been passed on. */
    TAKEN,
    /** It says again what has been said. */
    REPEATED,
    /** It does not come after the last of its kind: a repeat, or the instrument has restarted. Nothing was passed on. */
    UNDECIDED
}
