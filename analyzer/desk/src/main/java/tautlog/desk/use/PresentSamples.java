package tautlog.desk.use;

import java.util.Arrays;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;

/**
 * Counts the samples that are there and mean something, and remembers when each frame was.
 *
 * <p>Frames of one length that follow each other in even steps are remembered as one series; of an uneven instrument each is one, 32
 * bytes long.
 */
final class PresentSamples extends QuietEvidence {
    private final SampleTicks sampleTicks;
    private long[] numbers = new long[16];
    private long[] ticks = new long[16];
    private long[] steps = new long[16];
    private int[] lengths = new int[16];
    private int[] frames = new int[16];
    private int series;
    private long nextNumber;
    private long lastTick;
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
        int last = series - 1;
        boolean goesOn = series > 0 && number == nextNumber && n == lengths[last];
        if (goesOn && frames[last] > 1 && tick - lastTick == steps[last]) {
            frames[last]++;
        } else if (goesOn && frames[last] == 1) {
            steps[last] = tick - lastTick;
            frames[last] = 2;
        } else {
            begin(number, tick, n);
        }
        nextNumber = number + n;
        lastTick = tick;
        present += (flags & FLAG_OPEN_BRIDGE) == 0 ? n : 0;
    }

    /** All frames of a passage, as {@link #frame} each. */
    void frames(Passage passage) {
        int n = passage.frames();
        for (int i = evenSteps(passage, 0); i < n; i = evenSteps(passage, i + 1)) {
            frame(passage.frameNumber(i), passage.frameTick(i), 0, passage.frameLength(i));
        }
    }

    /** Takes frames from {@code first} on as far as they go on in the steps of the series; the first that does not. */
    private int evenSteps(Passage passage, int first) {
        int last = series - 1;
        if (last < 0 || frames[last] < 2) {
            return first;
        }
        int length = lengths[last];
        long step = steps[last];
        int i = first;
        while (i < passage.frames()
                && passage.frameTick(i) - lastTick == step
                && passage.frameNumber(i) == nextNumber
                && passage.frameLength(i) == length) {
            lastTick += step;
            nextNumber += length;
            i++;
        }
        frames[last] += i - first;
        present += (long) (i - first) * length;
        return i;
    }

    private void begin(long number, long tick, int n) {
        if (series == numbers.length) {
            int room = 2 * series;
            numbers = Arrays.copyOf(numbers, room);
            ticks = Arrays.copyOf(ticks, room);
            steps = Arrays.copyOf(steps, room);
            lengths = Arrays.copyOf(lengths, room);
            frames = Arrays.copyOf(frames, room);
        }
        numbers[series] = number;
        ticks[series] = tick;
        lengths[series] = n;
        frames[series] = 1;
        series++;
    }

    /** How many numbers from the first sample to {@code lastNumber} are in a gap; 0 when no sample came. */
    long missingUpTo(long lastNumber) {
        return numbersUpTo(lastNumber) - present;
    }

    /** How many numbers there are from the first sample to {@code lastNumber}; 0 when no sample came. */
    long numbersUpTo(long lastNumber) {
        return series > 0 ? lastNumber - numbers[0] + 1 : 0;
    }

    /** When sample {@code number}, which came, was taken. */
    long tickOf(long number) {
        int found = Arrays.binarySearch(numbers, 0, series, number);
        int at = found >= 0 ? found : -found - 2;
        int frame = (int) ((number - numbers[at]) / lengths[at]);
        if (frame > 0) {
            feed(at, frame - 1);
        } else if (at > 0) {
            feed(at - 1, frames[at - 1] - 1);
        }
        feed(at, frame);
        return sampleTicks.tickOf((int) (number - numbers[at] - (long) frame * lengths[at]));
    }

    private void feed(int at, int frame) {
        long n = lengths[at];
        sampleTicks.frame(numbers[at] + frame * n, ticks[at] + frame * steps[at], (int) n);
    }
}
