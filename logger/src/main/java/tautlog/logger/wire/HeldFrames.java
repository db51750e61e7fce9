package tautlog.logger.wire;

import java.util.ArrayDeque;
import tautlog.sample.Instrument;

/** Frames that wait for a HELLO, oldest first, each for at most 2 s. */
final class HeldFrames {
    /** Source: {@code firmware-notes/wire.md}, "Reading it". */
    static final long LONGEST_NANOS = 2_000_000_000L;
    /** Four seconds of one-sample frames at the highest rate; chosen to bound memory when a line is flooded. */
    static final int MOST = 16_384;

    private record Waiting(long nanos, HeldFrame frame) {}

    private final ArrayDeque<Waiting> queue = new ArrayDeque<>();
    private final LineTally tally;

    HeldFrames(LineTally tally) {
        this.tally = tally;
    }

    boolean isEmpty() {
        return queue.isEmpty();
    }

    void add(long nanos, HeldFrame frame) {
        if (queue.size() == MOST) {
            lose();
        }
        queue.add(new Waiting(nanos, frame));
    }

    HeldFrame first() {
        return queue.getFirst().frame;
    }

    HeldFrame removeFirst() {
        return queue.removeFirst().frame;
    }

    /** Counts as lost what has waited for more than 2 s at {@code nanos}. */
    void expire(long nanos) {
        while (!queue.isEmpty() && nanos - queue.getFirst().nanos > LONGEST_NANOS) {
            lose();
        }
    }

    /** Counts as lost all frames. */
    void loseAll() {
        while (!queue.isEmpty()) {
            lose();
        }
    }

    /**
     * Counts as lost what cannot be of the boot that {@code instrument}'s HELLO at {@code helloTick} speaks of: all up to
     * the last frame that was not made in the 2 s before it, and all before the last restart of the numbers. 10 ms after
     * it are let pass: a frame may overtake a HELLO that is ready to be sent.
     *
     * @return true when there was any
     */
    boolean keepThoseOf(Instrument instrument, long helloTick) {
        int begin = Math.max(firstNear(instrument, helloTick), firstOfLastRun());
        for (int i = 0; i < begin; i++) {
            lose();
        }
        return begin > 0;
    }

    private int firstNear(Instrument instrument, long helloTick) {
        long window = LONGEST_NANOS / 1_000_000_000L * instrument.tickHz();
        int begin = 0;
        int index = 0;
        for (Waiting waiting : queue) {
            index++;
            HeldFrame frame = waiting.frame;
            long span = frame.samples() * 1_000L * instrument.tickHz() / instrument.rateMillihertz();
            int age = (int) (helloTick - frame.tick());
            if (age < -window / 200 || age > window + span) {
                begin = index;
            }
        }
        return begin;
    }

    /** Numbers count from the instrument's start, so a number before the first of a run begins the next run. */
    private int firstOfLastRun() {
        int begin = 0;
        int index = 0;
        long firstNumber = -1;
        for (Waiting waiting : queue) {
            if (waiting.frame instanceof HeldFrame.Tension tension) {
                boolean isRestart = firstNumber >= 0 && (int) (tension.number() - firstNumber) < 0;
                if (isRestart) {
                    begin = index;
                }
                if (isRestart || firstNumber < 0) {
                    firstNumber = tension.number();
                }
            }
            index++;
        }
        return begin;
    }

    private void lose() {
        tally.heard(queue.removeFirst().frame.seq());
        tally.heldInVain();
    }
}
