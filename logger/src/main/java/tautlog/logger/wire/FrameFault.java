package tautlog.logger.wire;

/**
 * Why a piece between two zeros is no frame: the first test that it failed, in the order of these constants. Source:
 * {@code firmware-notes/wire.md}, "Reading it".
 */
public enum FrameFault {
    /** More than 254 bytes once decoded. */
    TOO_LONG,
    /** A length byte of the encoding points beyond the end. */
    BAD_COBS,
    /** Fewer than the 6 bytes of kind, seq and checksum. */
    TOO_SHORT,
    /** The checksum does not fit. */
    BAD_CRC,
    /** No kind that goes in this direction. */
    UNKNOWN_KIND,
    /** The payload's length does not fit its kind. */
    BAD_LENGTH,
    /** A HELLO of another version than 1. */
    UNSUPPORTED_VERSION,
    /** A value out of its range. */
    BAD_VALUE
}
