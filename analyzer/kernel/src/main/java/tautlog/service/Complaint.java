package tautlog.service;

/**
 * Something about a line of the ledger that its owner should know.
 *
 * @param file name as the reader was given it
 * @param line from 1
 * @param found what was found, without a full stop
 * @param advice the next step, whole sentences
 */
public record Complaint(Weight weight, String file, int line, String found, String advice) {
    /** What became of the line. */
    public enum Weight {
        /** What it says is in no figure. */
        IGNORED,
        /** It counts; something of it does not, or should be looked at. */
        REMARK
    }

    @Override
    public String toString() {
        return file + ":" + line + ": " + found + "." + (advice.isEmpty() ? "" : "\n  " + advice);
    }
}
