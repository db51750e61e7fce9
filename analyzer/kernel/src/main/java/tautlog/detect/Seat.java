package tautlog.detect;

/** The sample at which a shaft reading sits. One object, filled anew. */
final class Seat {
    /** No present sample follows, as far as is known. */
    static final long NONE = Long.MAX_VALUE;

    /** Its number; the one before the outing's first when the reading came before that. */
    long number;
    /** Its place among the present samples; -1 before the first. */
    long place = -1;
    /** Its tick, when no present sample follows; else only a tick not before it. */
    long tick;
    /** Number of the next present sample, or {@link #NONE}. */
    long next;

    void set(long number, long place, long tick, long next) {
        this.number = number;
        this.place = place;
        this.tick = tick;
        this.next = next;
    }
}
