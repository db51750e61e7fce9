package tautlog.desk.use;

import tautlog.sample.QuietEvidence;

/** Counts the samples that are there and mean something. */
final class PresentSamples extends QuietEvidence {
    private boolean any;
    private long firstNumber;
    private long firstTick;
    private long present;

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (!any) {
            any = true;
            firstNumber = number;
            firstTick = tick;
        }
        present += (flags & FLAG_OPEN_BRIDGE) == 0 ? n : 0;
    }

    /** How many numbers from the first sample to {@code lastNumber} are in a gap; 0 when no sample came. */
    long missingUpTo(long lastNumber) {
        return numbersUpTo(lastNumber) - present;
    }

    /** How many numbers there are from the first sample to {@code lastNumber}; 0 when no sample came. */
    long numbersUpTo(long lastNumber) {
        return any ? lastNumber - firstNumber + 1 : 0;
    }

    /** {@code otherwise} when no sample came. */
    long firstTickOr(long otherwise) {
        return any ? firstTick : otherwise;
    }
}
