package tautlog.detect;

import tautlog.recording.CodedTrace;

/** A shaft at 540 rpm with 6 pulses a revolution, which tells of it every 100 ms. */
final class BenchShaft {
    private static final int TICKS_PER_FRAME = 100_000;
    private static final long TICKS_PER_PULSE = 18_518;

    private final long[] ticks = new long[8];
    private long nextFrame = TICKS_PER_FRAME;
    private long nextPulse = TICKS_PER_PULSE;
    private long pulses;

    /** Takes its frames. */
    interface Frame {
        void shaft(long tick, long pulses, long[] pulseTicks, int n);
    }

    /** Tells what was before the sample {@code number}. */
    void tellBefore(long number, Frame to) {
        for (; nextFrame < number * CodedTrace.TICKS_PER_SAMPLE; nextFrame += TICKS_PER_FRAME) {
            int n = 0;
            for (; nextPulse <= nextFrame; nextPulse += TICKS_PER_PULSE) {
                ticks[n++] = nextPulse;
            }
            pulses += n;
            to.shaft(nextFrame, pulses, ticks, n);
        }
    }
}
