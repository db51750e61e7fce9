package tautlog.usage;

/**
 * How much of some time is known. Source: {@code FINDINGS.md}, Hours and Gap.
 *
 * @param logged time from the first sample number to the last, gaps included
 * @param gaps of it, time in gaps: sample numbers that are missing, or of frames whose bridge was open. Nothing is known of the line
 * @param withoutShaft of it, time for which no shaft reading speaks
 */
public record Coverage(TimeSum logged, TimeSum gaps, TimeSum withoutShaft) {
    public static final Coverage NONE = new Coverage(TimeSum.ZERO, TimeSum.ZERO, TimeSum.ZERO);

    public Coverage plus(Coverage other) {
        return new Coverage(logged.plus(other.logged), gaps.plus(other.gaps), withoutShaft.plus(other.withoutShaft));
    }
}
