package tautlog.detect;

import tautlog.sample.Instrument;
import tautlog.sample.SampleTicks;

/**
 * The latest frames of present samples: which sample was the latest at a tick, and which tick a sample has.
 *
 * <p>Kept as far back as shaft readings and drops need it. The frames are objects made once and used again.
 */
final class Frames {
    private static final class Frame {
        final SampleTicks ticks;
        long number;
        long tick;
        long place;
        int n;

        Frame(Instrument instrument) {
            ticks = new SampleTicks(instrument);
        }

        /** The latest sample with a tick at or before {@code t}; the first has one. */
        int latestAt(long t) {
            int k = ticks.sampleNear(t, n);
            while (k < n - 1 && ticks.isAtOrBefore(k + 1, t)) {
                k++;
            }
            while (k > 0 && !ticks.isAtOrBefore(k, t)) {
                k--;
            }
            return k;
        }
    }

    private final Instrument instrument;
    private final SampleTicks latest;
    /** Its length is a power of two, so that no place in it costs a division. */
    private Frame[] ring;

    private int head;
    private int size;
    private long newestTick = Long.MIN_VALUE;
    private long firstNumber;
    private boolean anyPresent;

    Frames(Instrument instrument) {
        this.instrument = instrument;
        latest = new SampleTicks(instrument);
        ring = new Frame[] {new Frame(instrument), new Frame(instrument)};
    }

    /** Takes the next frame, whose samples are not present. */
    void absent(long number, long tick, int n) {
        latest.frame(number, tick, n);
        newestTick = tick;
    }

    /** Takes the next frame of present samples, the first of them at {@code place}. */
    void present(long number, long tick, int n, long place) {
        absent(number, tick, n);
        if (size == ring.length) {
            grow();
        }
        Frame frame = at(size++);
        frame.ticks.copyFrom(latest);
        frame.number = number;
        frame.tick = tick;
        frame.place = place;
        frame.n = n;
        if (!anyPresent) {
            anyPresent = true;
            firstNumber = number;
        }
    }

    boolean anyPresent() {
        return anyPresent;
    }

    /** True when no later sample can have a tick at or before {@code tick}. */
    boolean isPast(long tick) {
        return newestTick > tick;
    }

    /** Finds the latest present sample with a tick at or before {@code tick}; call only when {@link #anyPresent}. */
    void seat(long tick, Seat seat) {
        int i = size - 1;
        while (i >= 0 && at(i).tick > tick) {
            i--;
        }
        if (i < 0) {
            seat.set(firstNumber - 1, -1, Long.MIN_VALUE, firstNumber);
            return;
        }
        Frame frame = at(i);
        int k = frame.latestAt(tick);
        long next = k < frame.n - 1 ? frame.number + k + 1 : i < size - 1 ? at(i + 1).number : Seat.NONE;
        seat.set(frame.number + k, frame.place + k, next == Seat.NONE ? frame.ticks.tickOf(k) : tick, next);
    }

    /** Tick of the present sample {@code number}, which lies in a frame still kept. */
    long tickOf(long number) {
        Frame frame = at(holding(number));
        return frame.ticks.tickOf((int) (number - frame.number));
    }

    /** Tick of the frame that holds {@code number} and is still kept. */
    long frameTickOf(long number) {
        return at(holding(number)).tick;
    }

    /** Place of the latest present sample at or before {@code number}; -1 when no such sample is kept. */
    long placeAtOrBefore(long number) {
        int i = holding(number);
        if (i < 0) {
            return -1;
        }
        Frame frame = at(i);
        return frame.place + Math.min(frame.n - 1, number - frame.number);
    }

    private int holding(long number) {
        int i = size - 1;
        while (i >= 0 && at(i).number > number) {
            i--;
        }
        return i;
    }

    /** Nobody asks for a tick before {@code tick} or a number before {@code number} any more. */
    void forgetBefore(long tick, long number) {
        while (size > 1 && at(1).tick <= tick && at(1).number <= number) {
            head = (head + 1) & (ring.length - 1);
            size--;
        }
    }

    private Frame at(int i) {
        return ring[(head + i) & (ring.length - 1)];
    }

    private void grow() {
        Frame[] larger = new Frame[2 * ring.length];
        for (int i = 0; i < larger.length; i++) {
            larger[i] = i < size ? at(i) : new Frame(instrument);
        }
        ring = larger;
        head = 0;
    }
}
