package tautlog.detect;

/** Receives what the detectors see, each as soon as it is complete; called from the detectors' thread. */
public interface FindingSink {
    void finding(Finding finding);

    void second(Second second);

    /** False when {@link #second} need not be called: that saves a tenth. Asked once, before anything is told. */
    default boolean takesSeconds() {
        return true;
    }

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

    /** Some readings at once; as {@link #shaftReading} each, shaft frames that gave none left out. */
    default void shaftReadings(ShaftReadings readings) {
        for (int i = 0; i < readings.size(); i++) {
            if (!Double.isNaN(readings.rpm(i))) {
                shaftReading(readings.tick(i), readings.rpm(i));
            }
        }
    }

    /**
     * The time between two shaft readings, for the wear of the joint; comes after the second of them.
     *
     * @param ticks between them
     * @param rpm the first of them
     * @param samples how many present samples the first of them speaks for
     * @param greatest count of these samples
     * @param clutch engaged in that time, if the instrument tells
     */
    default void shaftInterval(long ticks, double rpm, int samples, GreatestCount greatest, Known clutch) {}

    /**
     * The times between some readings, one and the next, at once: each has present samples, all of a slack line.
     *
     * @param atMost no count of these samples is greater
     * @param clutch of all that time
     * @return false when more must be known: then nothing was taken, each comes by {@link #shaftInterval}
     */
    default boolean slackIntervals(ShaftReadings readings, int atMost, Known clutch) {
        return false;
    }
}
