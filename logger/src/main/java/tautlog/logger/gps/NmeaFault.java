package tautlog.logger.gps;

/** Why a line was not taken: the first of these that applies. */
public enum NmeaFault {
    /** Longer than a sentence can be. */
    TOO_LONG,
    /** It does not begin with a dollar sign, as the rest of a line does when listening begins in its middle. */
    NO_START,
    /** No {@code *hh} at its end. A sentence without a checksum proves nothing. */
    NO_CHECKSUM,
    BAD_CHECKSUM,
    /** A right sentence of another kind. */
    UNKNOWN,
    /** RMC or GGA with a field missing or out of its range. */
    BAD_FIELD
}
