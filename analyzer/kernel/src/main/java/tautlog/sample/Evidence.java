package tautlog.sample;

/**
 * Everything that one outing tells, in the order in which it became known: the spine of both programs.
 *
 * <p>Who calls: the logger, live; the recording, on replay. Who implements: the recording's writer, the detectors, tests.
 * Calls come from one thread. Numbers and ticks are unwrapped to 64 bits and never go back within an outing. Arrays
 * belong to the caller and are only valid during the call. An outing's first tick is the wire's, 0 to 2³² − 1; a pulse or
 * a frame that was made a little before it can lie below zero.
 *
 * <p>A replay makes the same calls as the live run, except that shaft frames and samples may be interleaved otherwise:
 * an implementation joins them by tick, never by order of arrival. A shaft frame may come any time before, but at most
 * 10 s (by tick) after the samples of its time; what comes later may go unheard. {@link #input}, {@link #hookup}, {@link #mark} and {@link #zero}
 * act at a sample number and come before the first sample with that number or a later one.
 */
public interface Evidence {
    /** Told in place of a hookup's id where damage took the naming along: no rig has it, and the lowest limit counts, assumed. */
    String UNKNOWN_HOOKUP = "?";

    /** Bit of {@code flags}: some sample of the frame is at the converter's end stop. */
    int FLAG_END_STOP = 1;
    /** Bit of {@code flags}: the bridge is open or shorted, the frame's counts mean nothing. */
    int FLAG_OPEN_BRIDGE = 2;

    /**
     * A frame of consecutive samples.
     *
     * @param number of the first sample; above the number of every sample before it
     * @param tick at which the first sample was taken; {@link SampleTicks} gives the others'
     * @param flags {@link #FLAG_END_STOP}, {@link #FLAG_OPEN_BRIDGE}
     * @param counts as the converter gave them; the frame is {@code counts[from]} to {@code counts[from + n - 1]}
     * @param n 1 or more
     */
    void tension(long number, long tick, int flags, int[] counts, int from, int n);

    /**
     * A shaft frame.
     *
     * @param tick of the frame ("now" at the instrument)
     * @param pulses since the instrument's boot, unwrapped
     * @param pulseTicks when each pulse since the shaft frame before came, oldest first; {@code pulseTicks[0]} to
     *     {@code pulseTicks[n - 1]}. When {@code pulses} grew by more than {@code n}, pulses before these are missing
     */
    void shaft(long tick, long pulses, long[] pulseTicks, int n);

    /**
     * The switches on the instrument.
     *
     * @param atNumber the sample number from which they hold
     * @param selector position of the hookup switch; 0 none
     * @param present which of the bits of {@code state} mean something: 0 mark button, 1 clutch engaged, 2 brake on
     */
    void input(long atNumber, long tick, int selector, int present, int state);

    /** From sample {@code atNumber} on, the hookup {@code id} of the rig is on, because of {@code by}. */
    void hookup(long atNumber, String id, HookupSource by);

    /** A person left a note at sample {@code atNumber}; {@code note} may be empty (the button). */
    void mark(long atNumber, String note);

    /** The instrument's own state; {@code lost} counts the samples that it lost itself since boot. */
    void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost);

    /** At {@code tick} it was {@code utcMicros} (microseconds since 1970-01-01T00:00Z) by the logger's clock. */
    void clock(long tick, long utcMicros);

    /**
     * From sample {@code atNumber} on, the unloaded cell reads {@code shiftCounts} more than its calibration says. The counts
     * stay as they came; {@link ZeroShift} takes the shift off them for who turns them into newtons.
     *
     * @param shiftCounts replaces the shift before; an outing begins with 0
     */
    void zero(long atNumber, int shiftCounts, ZeroSource by);

    /** Where the winch was, by a satellite receiver. */
    void position(Position position);

    /** What the line lost so far in this outing; replaces the tally before. */
    void tally(Tally tally);

    /** The outing is over; nothing follows. */
    void end();
}
