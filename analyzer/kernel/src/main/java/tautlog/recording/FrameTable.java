package tautlog.recording;

import java.util.Arrays;

/**
 * Frames of samples in order: each with its number, tick and flags, and the counts of all of them end to end. What a sample
 * block holds, before it is coded and after. Grows; reused from block to block.
 */
final class FrameTable {
    long[] number = new long[64];
    long[] tick = new long[64];
    int[] flags = new int[64];
    /** Frame i is {@code counts[from[i]]} to {@code counts[from[i + 1] - 1]}. */
    int[] from = new int[65];

    int frames;
    int[] counts = new int[1024];
    /** True when the samples of all frames surely go on in one run of numbers with the same flags. */
    boolean isOneStretch;

    int samples() {
        return from[frames];
    }

    int length(int frame) {
        return from[frame + 1] - from[frame];
    }

    /** The number after the last sample. */
    long nextNumber() {
        return frames == 0 ? 0 : number[frames - 1] + length(frames - 1);
    }

    void clear() {
        frames = 0;
        isOneStretch = false;
    }

    void add(long firstNumber, long firstTick, int frameFlags, int[] source, int at, int n) {
        addFrame(firstNumber, firstTick, frameFlags, n);
        System.arraycopy(source, at, counts, from[frames - 1], n);
    }

    /** Adds all frames of {@code others}. */
    void addAll(FrameTable others) {
        int at = from[frames];
        for (int i = 0; i < others.frames; i++) {
            addFrame(others.number[i], others.tick[i], others.flags[i], others.length(i));
        }
        System.arraycopy(others.counts, 0, counts, at, others.samples());
    }

    /** Adds a frame whose counts are filled in later. */
    void addFrame(long firstNumber, long firstTick, int frameFlags, int n) {
        if (frames == number.length) {
            growFrames(frames * 2);
        }
        int end = Math.addExact(from[frames], n);
        if (end > counts.length) {
            counts = Arrays.copyOf(counts, Math.max(end, Math.min(counts.length * 2, Block.SAMPLES + 128)));
        }
        isOneStretch = false;
        number[frames] = firstNumber;
        tick[frames] = firstTick;
        flags[frames] = frameFlags;
        from[++frames] = end;
    }

    /** Begins anew with {@code howMany} frames of {@code samples} samples in all, to be filled in. */
    void begin(int howMany, int samples) {
        if (howMany > number.length) {
            frames = 0;
            growFrames(howMany);
        }
        if (samples > counts.length) {
            counts = new int[Math.max(samples, Math.min(counts.length * 2, Block.SAMPLES + 128))];
        }
        frames = howMany;
        isOneStretch = false;
    }

    private void growFrames(int room) {
        number = Arrays.copyOf(number, room);
        tick = Arrays.copyOf(tick, room);
        flags = Arrays.copyOf(flags, room);
        from = Arrays.copyOf(from, room + 1);
    }

    /** The first frame after {@code frame} whose samples do not go on in the same run of numbers with the same flags. */
    int endOfStretch(int frame) {
        if (isOneStretch) {
            return frames;
        }
        int next = frame + 1;
        while (next < frames && number[next] == number[next - 1] + length(next - 1) && flags[next] == flags[frame]) {
            next++;
        }
        return next;
    }
}
