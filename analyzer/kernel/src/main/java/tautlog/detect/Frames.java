package tautlog.detect;

import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.SampleTicks;

/**
 * The latest frames of present samples: which sample was the latest at a tick, and which tick a sample has.
 *
 * <p>Kept as far back as shaft readings and drops need it, in columns. Who asks for ticks asks for later and later ones: the search
 * goes on where the one before ended.
 */
final class Frames {
    private final SampleTicks latest;
    /** Two shaft readings are at least so far apart. */
    private final long betweenReadings;
    /** The columns' length is a power of two, so that no place in them costs a division. */
    private long[] numbers = new long[64];

    private long[] ticks = new long[64];
    private long[] places = new long[64];
    private int[] lengths = new int[64];
    private long[] stepTicks = new long[64];
    private long[] stepSamples = new long[64];

    private int head;
    private int size;
    /** The frame found last, counted from the oldest. */
    private int found;

    private boolean rises = true;
    private long newestTick = Long.MIN_VALUE;
    private long firstNumber;
    private boolean anyPresent;

    Frames(Instrument instrument) {
        latest = new SampleTicks(instrument);
        betweenReadings = instrument.tickHz() / ShaftSpeed.READINGS_PER_SECOND;
    }

    /** Takes the next frame, whose samples are not present. */
    void absent(long number, long tick, int n) {
        latest.frame(number, tick, n);
        newestTick = tick;
    }

    /** Takes the next frame of present samples, the first of them at {@code place}. */
    void present(long number, long tick, int n, long place) {
        absent(number, tick, n);
        if (size == numbers.length) {
            grow();
        }
        rises &= size == 0 || tick >= ticks[at(size - 1)];
        add(number, tick, n, place);
        if (!anyPresent) {
            anyPresent = true;
            firstNumber = number;
        }
    }

    private void add(long number, long tick, int n, long place) {
        int at = at(size++);
        numbers[at] = number;
        ticks[at] = tick;
        places[at] = place;
        lengths[at] = n;
        stepTicks[at] = latest.ticks();
        stepSamples[at] = latest.samples();
    }

    /**
     * Takes the frames of a passage, which begin in order and go on where the frame before ended, the first of them at {@code place}.
     *
     * @return whether surely a sample of them lies between any two shaft readings of their time
     */
    boolean present(Passage passage, long place) {
        int n = passage.frames();
        while (size + n > numbers.length) {
            grow();
        }
        boolean areClose = latestIsClose();
        long first = passage.frameNumber(0);
        for (int i = 0; i < n; i++) {
            long number = passage.frameNumber(i);
            long tick = passage.frameTick(i);
            int length = passage.frameLength(i);
            areClose = areClose && goesOnSoon(tick);
            latest.frame(number, tick, length);
            areClose = areClose && latestIsClose();
            newestTick = tick;
            add(number, tick, length, place + number - first);
        }
        return areClose;
    }

    /** Whether surely a sample of the frame that came last lies between any two shaft readings of its time. */
    boolean latestIsClose() {
        return latest.ticks() + latest.samples() <= betweenReadings * latest.samples();
    }

    /** The same of the time from the last sample of such a frame to a frame that begins at {@code tick}. */
    private boolean goesOnSoon(long tick) {
        long apart = tick - newestTick;
        long tooFar = apart - betweenReadings;
        long lastSample = 2L * (lengths[at(size - 1)] - 1) * latest.ticks() + latest.samples();
        return apart <= Integer.MAX_VALUE && tooFar * 2 * latest.samples() <= lastSample;
    }

    /** False once a frame began before the one before it: then nothing may be concluded from the latest tick. */
    boolean rise() {
        return rises;
    }

    boolean anyPresent() {
        return anyPresent;
    }

    /** Where the frame that came last began. */
    long newestTick() {
        return newestTick;
    }

    /** True when no later sample can have a tick at or before {@code tick}. */
    boolean isPast(long tick) {
        return newestTick > tick;
    }

    /** Finds the latest present sample with a tick at or before {@code tick}; call only when {@link #anyPresent}. */
    void seat(long tick, Seat seat) {
        int i = latestAt(tick);
        if (i < 0) {
            seat.set(firstNumber - 1, -1, Long.MIN_VALUE, firstNumber);
            return;
        }
        int at = at(i);
        int n = lengths[at];
        int k = sampleAt(tick, at);
        long next = k < n - 1 ? numbers[at] + k + 1 : i < size - 1 ? numbers[at(i + 1)] : Seat.NONE;
        seat.set(numbers[at] + k, places[at] + k, next == Seat.NONE ? tickOf(k, at) : tick, next);
    }

    /** The latest frame with a tick at or before {@code tick}, counted from the oldest; -1 when there is none. */
    private int latestAt(long tick) {
        int i = rises ? Math.min(found, size - 1) : size - 1;
        while (i >= 0 && ticks[at(i)] > tick) {
            i--;
        }
        while (i < size - 1 && ticks[at(i + 1)] <= tick) {
            i++;
        }
        found = Math.max(0, i);
        return i;
    }

    /** The latest sample of the frame at {@code at} with a tick at or before {@code tick}; the first has one. */
    private int sampleAt(long tick, int at) {
        int n = lengths[at];
        int k = SampleTicks.sampleNear(tick, n, ticks[at], stepTicks[at], stepSamples[at]);
        while (k < n - 1 && isAtOrBefore(k + 1, tick, at)) {
            k++;
        }
        while (k > 0 && !isAtOrBefore(k, tick, at)) {
            k--;
        }
        return k;
    }

    private boolean isAtOrBefore(int k, long tick, int at) {
        return SampleTicks.isAtOrBefore(k, tick, ticks[at], stepTicks[at], stepSamples[at]);
    }

    private long tickOf(int k, int at) {
        return SampleTicks.tickOf(k, ticks[at], stepTicks[at], stepSamples[at]);
    }

    /** Tick of the present sample {@code number}, which lies in a frame still kept. */
    long tickOf(long number) {
        int at = at(holding(number));
        return tickOf((int) (number - numbers[at]), at);
    }

    /** Tick of the frame that holds {@code number} and is still kept. */
    long frameTickOf(long number) {
        return ticks[at(holding(number))];
    }

    /** Place of the latest present sample at or before {@code number}; -1 when no such sample is kept. */
    long placeAtOrBefore(long number) {
        int i = holding(number);
        if (i < 0) {
            return -1;
        }
        int at = at(i);
        return places[at] + Math.min(lengths[at] - 1, number - numbers[at]);
    }

    /** The latest frame that begins at {@code number} or before, counted from the oldest: numbers rise. -1 when there is none. */
    private int holding(long number) {
        int low = -1;
        int high = size;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (numbers[at(middle)] > number) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low;
    }

    /** Nobody asks for a tick before {@code tick} or a number before {@code number} any more. */
    void forgetBefore(long tick, long number) {
        while (size > 1 && ticks[at(1)] <= tick && numbers[at(1)] <= number) {
            head = at(1);
            size--;
            found = Math.max(0, found - 1);
        }
    }

    private int at(int i) {
        return (head + i) & (numbers.length - 1);
    }

    private void grow() {
        numbers = grown(numbers);
        ticks = grown(ticks);
        places = grown(places);
        stepTicks = grown(stepTicks);
        stepSamples = grown(stepSamples);
        int[] more = new int[2 * lengths.length];
        for (int i = 0; i < size; i++) {
            more[i] = lengths[(head + i) & (lengths.length - 1)];
        }
        lengths = more;
        head = 0;
    }

    private long[] grown(long[] column) {
        long[] more = new long[2 * column.length];
        for (int i = 0; i < size; i++) {
            more[i] = column[(head + i) & (column.length - 1)];
        }
        return more;
    }
}
