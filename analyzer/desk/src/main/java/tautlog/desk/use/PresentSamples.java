package tautlog.desk.use;

import java.util.Arrays;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;

/** Counts the samples that are there and mean something, and remembers when each frame was: some 20 bytes a frame. */
final class PresentSamples extends QuietEvidence {
    private final SampleTicks sampleTicks;
    private long[] numbers = new long[1_024];
    private long[] ticks = new long[1_024];
    private int[] lengths = new int[1_024];
    private int frames;
    private long present;

    PresentSamples(Instrument instrument) {
        sampleTicks = new SampleTicks(instrument);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        frame(number, tick, flags, n);
    }

    /** As {@link #tension}, which does not look at the counts. */
    void frame(long number, long tick, int flags, int n) {
        if (frames == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * frames);
            ticks = Arrays.copyOf(ticks, 2 * frames);
            lengths = Arrays.copyOf(lengths, 2 * frames);
        }
        numbers[frames] = number;
        ticks[frames] = tick;
        lengths[frames] = n;
        frames++;
        present += (flags & FLAG_OPEN_BRIDGE) == 0 ? n : 0;
    }

    /** How many numbers from the first sample to {@code lastNumber} are in a gap; 0 when no sample came. */
    long missingUpTo(long lastNumber) {
        return numbersUpTo(lastNumber) - present;
    }

    /** How many numbers there are from the first sample to {@code lastNumber}; 0 when no sample came. */
    long numbersUpTo(long lastNumber) {
        return frames > 0 ? lastNumber - numbers[0] + 1 : 0;
    }

    /** When sample {@code number}, which came, was taken. */
    long tickOf(long number) {
        int found = Arrays.binarySearch(numbers, 0, frames, number);
        int frame = found >= 0 ? found : -found - 2;
        if (frame > 0) {
            sampleTicks.frame(numbers[frame - 1], ticks[frame - 1], lengths[frame - 1]);
        }
        sampleTicks.frame(numbers[frame], ticks[frame], lengths[frame]);
        return sampleTicks.tickOf((int) (number - numbers[frame]));
    }
}
