package tautlog.logger.wire;

import tautlog.sample.Tally;

/**
 * What the line brought to no use.
 *
 * @param tally of the outing that is on, else of what came since the last one ended: an outing to come takes it over, and when
 *     none comes, because no HELLO does, it is told here only
 * @param otherChannelFrames TENSION frames of channels other than the line's, since the start
 * @param outing whether one is on
 */
public record LineCounts(Tally tally, long otherChannelFrames, OutingState outing) {
    /** Nothing came yet. */
    public static final LineCounts NONE = new LineCounts(Tally.NONE, 0, OutingState.NONE);

    /** Whether what comes belongs to an outing. */
    public enum OutingState {
        ON,
        /** None, because two instruments speak on the line. */
        TWO_INSTRUMENTS,
        NONE
    }
}
