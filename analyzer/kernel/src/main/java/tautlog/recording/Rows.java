package tautlog.recording;

import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;

/**
 * What a replay and a sum of outings read of a recording, in one view of it.
 *
 * <pre>
 *   SqlRows:    any recording, through SQLite
 *   PlainRows:  a closed one, out of its bytes
 * </pre>
 */
interface Rows {
    /** Takes a few columns of a row of {@code tail} or {@code finding}. */
    interface Taker {
        /**
         * @param numbers the whole numbers, in the order of the columns
         * @param bytes the blob, or the text in UTF-8
         */
        void take(long[] numbers, byte[] bytes);
    }

    /** Takes a row of {@code evidence}. */
    interface EvidenceTaker {
        void take(EvidenceRow row) throws SQLException;
    }

    /** The winch's name; empty when it is lost. */
    String winch() throws SQLException;

    /** The recording's id; empty when it is lost. */
    String id() throws SQLException;

    /**
     * Gives the rows of evidence of an outing from {@code first} to {@code last} to {@code taker}, in order.
     *
     * @return the last of them, 0 when there is none
     */
    long evidence(int outing, long first, long last, EvidenceTaker taker) throws SQLException;

    /** How many rows of evidence, of whichever outing, stand between two of them. */
    long between(long row, long later) throws SQLException;

    /** All rows of evidence, in order, without their links; the blocks of samples and shaft empty. */
    void heads(Consumer<EvidenceRow> taker) throws SQLException;

    /** Those outings that have tail rows. */
    List<Integer> outingsWithTails() throws SQLException;

    /** The tail rows of an outing, in order: id, span as stored; blocks. */
    void tails(int outing, Taker taker) throws SQLException;

    /** The findings of an outing, in order: id, start, checksum; JSON. */
    void findings(int outing, Taker taker) throws SQLException;
}
