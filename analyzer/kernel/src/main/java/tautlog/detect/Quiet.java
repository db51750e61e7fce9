package tautlog.detect;

/**
 * The counts and numbers within which no detector has anything to tell at once, in the state that all of them are in.
 *
 * <p>A run that stays within them may wait for more samples to join it: nothing that it holds could be told any sooner. One
 * object, opened wide for every run and narrowed by each detector; a narrower one than need be costs time and changes no result.
 */
final class Quiet {
    private int least;
    private int greatest;
    private long through;

    /** Everything is quiet. */
    void openWide() {
        least = Integer.MIN_VALUE;
        greatest = Integer.MAX_VALUE;
        through = Long.MAX_VALUE;
    }

    /** Nothing is. */
    void never() {
        through = Long.MIN_VALUE;
    }

    /** No count below {@code count}. */
    void notBelow(long count) {
        least = (int) Math.max(least, count);
    }

    /** No count above {@code count}. */
    void notAbove(long count) {
        greatest = (int) Math.min(greatest, count);
    }

    /** No sample after {@code number}. */
    void notAfter(long number) {
        through = Math.min(through, number);
    }

    boolean holds(Run run) {
        return run.least >= least && run.greatest <= greatest && run.last() <= through;
    }
}
