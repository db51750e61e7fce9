package tautlog.detect;

/**
 * One detector's view of an outing: runs of present samples in order, with the gaps between them.
 *
 * <p>A run lies in one stretch, under one hookup and in one second. How samples are cut into runs never changes a result.
 */
interface Detector {
    /** Takes the next samples; {@code run} is only valid during the call. */
    void run(Run run);

    /**
     * Narrows {@code quiet} to the counts and numbers with which this detector tells no finding at once.
     *
     * @param run begins with the next sample; how it goes on is not known
     */
    void narrow(Quiet quiet, Run run);

    /** Between the run before and the next one, sample numbers are missing. */
    void gap(Gap gap);

    /** The outing's last sample has been taken. */
    void end();
}
