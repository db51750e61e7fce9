package tautlog.logger.instrument;

/** Why a line of text or an answer is no reading: the first test that it failed. */
public enum ReadingFault {
    /** Text: more than 128 characters without an end of line. */
    TOO_LONG,
    /** Text: not as many characters as every line has: some were lost, added, or two lines ran together. */
    WRONG_LENGTH,
    /** Text: a character beyond ASCII, a lone line end, or not the pattern's shape. */
    UNKNOWN_LINE,
    /** Text: the line's checksum does not fit. */
    BAD_CHECKSUM,
    /** Text: another unit than the configured one. */
    WRONG_UNIT,
    /** Text: a tared reading: it shows less than the line pulls. */
    NET_READING,
    /** Text: no number, or not with the configured decimals. */
    BAD_NUMBER,
    /** Beyond the full scale: a damaged number, a wrong order of words, a wrong setting. */
    OUT_OF_RANGE,
    /** Modbus: no answer, or no whole one, in time. */
    TIMEOUT,
    /** Modbus: the checksum of the answer does not fit. */
    BAD_CRC,
    /** Modbus: another device answered. */
    WRONG_UNIT_ID,
    /** Modbus: the device says that it cannot. */
    EXCEPTION,
    /** Modbus: not as many registers as were asked for. */
    SHORT_REPLY,
    /** Modbus: an answer to another question. */
    WRONG_FUNCTION,
    /** Modbus: bytes that nobody asked for, or that came after the time was up. */
    UNASKED,
    /** Modbus: a float that is no number. */
    NOT_FINITE,
    /**
     * Modbus: possible, but the order of its words is not proven, or it came at the start or after an absurd value, when ten in
     * a row are awaited.
     */
    UNPROVEN
}
