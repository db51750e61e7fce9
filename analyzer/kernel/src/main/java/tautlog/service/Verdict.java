package tautlog.service;

/** What a competent person decided after an inspection. */
public enum Verdict {
    /** It may be used again. */
    BACK_IN_SERVICE,
    /** It stays where nobody can use it. */
    STAYS_OUT,
    /** It is destroyed. */
    SCRAP
}
