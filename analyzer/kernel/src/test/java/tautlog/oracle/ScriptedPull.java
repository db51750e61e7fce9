package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import tautlog.fixtures.Rigs;

/**
 * One pull at 50 samples a second in which everything happens once, to be interrupted at every place.
 *
 * <pre>
 *   s   0      0.3   0.4      1.9   2.5      3.1             3.7    4.7   4.8
 *       slack, snap, settled, jolt, rising, over the limit, stall, drop, slack to 8.1
 * </pre>
 *
 * One count is one newton, the winch pulls 10 000 N, the limit is 8 000 N; the shaft turns at 600 rpm from three seconds before.
 */
final class ScriptedPull {
    static final int HERTZ = 50;
    /** The first sample's number; its tick leaves room for shaft frames before it. */
    static final long FIRST = 150;

    private ScriptedPull() {}

    static OutingData whole() {
        OutingBuilder outing = OutingBuilder.inNewtons(HERTZ * 1_000, Rigs.withLimit("10000", "8000"))
                .startingAt(FIRST)
                .framesOf(10);
        outing.hold(100, 15).samples(900, 2500, 4200, 3000).hold(1700, 26).hold(1800, 50);
        outing.samples(2500, 3900, 4100).hold(3000, 27);
        outing.hold(4500, 10).hold(6000, 10).hold(7500, 10);
        outing.hold(8100, 3).hold(7700, 5).hold(8500, 7).hold(7000, 5).hold(5000, 60);
        outing.samples(4000, 700).hold(300, 170);
        long stallMillis = 1_000 * FIRST / HERTZ + 3_700;
        outing.shaftFrames(0, 11_500, milli -> isPulse(milli, stallMillis));
        return outing.build();
    }

    /** Every 100 ms, for 0.6 s from {@code stall} every 200 ms. */
    private static boolean isPulse(long milli, long stall) {
        return milli % (milli > stall && milli <= stall + 600 ? 200 : 100) == 0;
    }

    /** Without the samples {@code from} to {@code from + length - 1}, counted from the first. */
    static OutingData without(OutingData whole, int from, int length) {
        List<OutingData.Frame> frames = new ArrayList<>();
        for (OutingData.Frame frame : whole.frames()) {
            add(frames, part(frame, frame.number(), FIRST + from, frame.flags()));
            add(frames, part(frame, FIRST + from + length, frame.lastNumber() + 1, frame.flags()));
        }
        return whole.withFrames(frames);
    }

    /** With these samples in frames that say that the bridge is open. */
    static OutingData withOpenBridge(OutingData whole, int from, int length) {
        List<OutingData.Frame> frames = new ArrayList<>();
        for (OutingData.Frame frame : whole.frames()) {
            add(frames, part(frame, frame.number(), FIRST + from, frame.flags()));
            add(frames, part(frame, FIRST + from, FIRST + from + length, 2));
            add(frames, part(frame, FIRST + from + length, frame.lastNumber() + 1, frame.flags()));
        }
        return whole.withFrames(frames);
    }

    /** The part of a frame with numbers from {@code from} to below {@code to}; it may be empty. */
    private static OutingData.Frame part(OutingData.Frame frame, long from, long to, int flags) {
        int first = (int)
                Math.min(Math.max(0, from - frame.number()), frame.counts().size());
        int last = (int)
                Math.max(first, Math.min(to - frame.number(), frame.counts().size()));
        long tick = frame.tick() + first * (1_000_000L / HERTZ);
        return new OutingData.Frame(
                frame.number() + first, tick, flags, frame.counts().subList(first, last));
    }

    private static void add(List<OutingData.Frame> frames, OutingData.Frame frame) {
        if (!frame.counts().isEmpty()) {
            frames.add(frame);
        }
    }
}
