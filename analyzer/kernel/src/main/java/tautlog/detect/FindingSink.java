package tautlog.detect;

/** Receives what the detectors see, each as soon as it is complete; called from the detectors' thread. */
public interface FindingSink {
    void finding(Finding finding);

    void second(Second second);

    /**
     * A cycle of the rainflow count of a pull.
     *
     * @param rangeCounts greatest − least
     * @param twiceMeanCounts greatest + least
     * @param halves 1 for a half cycle, 2 for a full one
     */
    void cycle(long rangeCounts, long twiceMeanCounts, int halves);

    /** A shaft reading in revolutions per minute at {@code tick}. */
    void shaftReading(long tick, double rpm);
}
