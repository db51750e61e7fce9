package tautlog.logger.wire;

import tautlog.sample.Instrument;

/**
 * Takes the frames that an instrument sends, with every value as it is on the wire: ticks and numbers are unsigned 32
 * bit and wrap, {@code seq} is 0 to 255. Arrays belong to the decoder and are only valid during the call.
 */
public interface FrameSink extends FaultSink {
    /** @param tick at which the frame was made ("now") */
    void hello(int seq, Instrument instrument, long tick);

    /**
     * Samples of one channel.
     *
     * @param tick of the first sample
     * @param number of the first sample
     * @param flags as sent: bit 0 end stop, bit 1 open bridge, bits 4 to 7 the channel
     * @param counts {@code counts[0]} to {@code counts[n - 1]}, each −8,388,608 to 8,388,607
     * @param n 1 to 78
     */
    void tension(int seq, long tick, long number, int flags, int[] counts, int n);

    /**
     * Pulses of the shaft.
     *
     * @param tick at which the frame was made ("now")
     * @param pulses since boot, wraps
     * @param ages in ticks, before {@code tick}, of {@code ages[0]} to {@code ages[n - 1]}, never rising (oldest first)
     * @param n 0 to 60
     */
    void shaft(int seq, long tick, long pulses, int[] ages, int n);

    /** @param lost samples that the instrument itself lost since boot */
    void health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost);

    /**
     * Switches.
     *
     * @param selector 0 to 255, 0 none
     * @param present which bits of {@code state} mean something: 0 mark button, 1 clutch, 2 brake
     */
    void input(int seq, long tick, int selector, int present, int state);
}
