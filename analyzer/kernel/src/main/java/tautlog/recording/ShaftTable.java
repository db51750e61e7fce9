package tautlog.recording;

import java.util.Arrays;

/** Shaft frames in order and the ticks of all their pulses end to end. Grows; reused from block to block. */
final class ShaftTable {
    long[] tick = new long[64];
    long[] pulses = new long[64];
    /** How many frames of samples came before it in the same span. */
    int[] samplesBefore = new int[64];
    /** Frame i is {@code pulseTick[from[i]]} to {@code pulseTick[from[i + 1] - 1]}. */
    int[] from = new int[65];

    int frames;
    long[] pulseTick = new long[512];

    int pulseTicks() {
        return from[frames];
    }

    int length(int frame) {
        return from[frame + 1] - from[frame];
    }

    void clear() {
        frames = 0;
    }

    void add(long atTick, long count, int sampleFramesBefore, long[] source, int at, int n) {
        if (frames == tick.length) {
            growFrames(frames * 2);
        }
        int end = from[frames] + n;
        if (end > pulseTick.length) {
            pulseTick = Arrays.copyOf(pulseTick, Math.max(end, pulseTick.length * 2));
        }
        tick[frames] = atTick;
        pulses[frames] = count;
        samplesBefore[frames] = sampleFramesBefore;
        System.arraycopy(source, at, pulseTick, from[frames], n);
        from[++frames] = end;
    }

    /** Makes room for {@code howMany} frames in all, to be filled in; {@link #frames} is set once they are. */
    void roomForFrames(int howMany) {
        if (howMany > tick.length) {
            growFrames(howMany);
        }
    }

    /** Makes room for {@code pulses} pulses in all, to be filled in; forgets those that are here. */
    void roomForPulses(int pulses) {
        if (pulses > pulseTick.length) {
            pulseTick = new long[pulses];
        }
    }

    private void growFrames(int room) {
        tick = Arrays.copyOf(tick, room);
        pulses = Arrays.copyOf(pulses, room);
        samplesBefore = Arrays.copyOf(samplesBefore, room);
        from = Arrays.copyOf(from, room + 1);
    }
}
