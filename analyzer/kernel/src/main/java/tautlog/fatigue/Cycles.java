package tautlog.fatigue;

/** Receives rainflow cycles in the order in which they close. */
@FunctionalInterface
public interface Cycles {
    /**
     * One cycle, from the point {@code from} at {@code fromIndex} to the point {@code to} at {@code toIndex}.
     *
     * @param halves 1 for a half cycle, 2 for a full one
     */
    void cycle(double from, double to, long fromIndex, long toIndex, int halves);
}
