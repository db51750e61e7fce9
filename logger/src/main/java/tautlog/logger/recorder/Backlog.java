package tautlog.logger.recorder;

import java.util.ArrayDeque;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * The bounded queue between the thread that reads the line and the one that writes the disk.
 *
 * <pre>
 *   reader ── open … events … shut ──▶ [ segment | segment | segment ] ──take──▶ recorder
 * </pre>
 *
 * <p>What the reader appends between {@link #open} and {@link #shut} becomes visible at once, so that a finding never
 * reaches the disk without the samples that completed it, nor they without it. Memory for {@link #HELD_SECONDS} of
 * samples, each in a frame of its own, is held at most; what comes after that is lost and counted, or waits
 * ({@link Overflow}). Findings, seconds and the ends of outings are few and always find room. What was lost is told by a mark
 * at the first sample after it, or behind the last when the outing ends before. Segments are used again: a steady stream
 * allocates nothing.
 */
public final class Backlog implements LiveEvents {
    /** How long a disk may stall before something is lost. */
    public static final int HELD_SECONDS = 60;

    private static final int SHAFT_FRAMES_PER_SECOND = 10;
    private static final int MOST_PULSES = 60;
    private static final int SPARE_SEGMENTS = 4;

    private final Overflow overflow;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition grown = lock.newCondition();
    private final Condition shrunk = lock.newCondition();
    private final ArrayDeque<Segment> waiting = new ArrayDeque<>();
    private final ArrayDeque<Segment> free = new ArrayDeque<>();
    private int mostSegments;
    private boolean closed;
    private boolean empty = true;
    private long oldestNanos;
    private long nowNanos;
    private long lostSamples;
    private long lostEvents;
    private long samplesLostSinceMark;
    private long eventsLostSinceMark;
    /** The sample that comes next, or was the first to find no room. */
    private long markNumber;

    public Backlog(Overflow overflow) {
        this.overflow = overflow;
        mostSegments = segmentsFor(1_000_000);
    }

    /** A backlog that is full after {@code segments} pieces of 64 KiB, whatever the sample rate. */
    Backlog(Overflow overflow, int segments) {
        this.overflow = overflow;
        mostSegments = -segments;
    }

    private static int segmentsFor(long rateMillihertz) {
        long words = HELD_SECONDS
                * (rateMillihertz * Segment.tensionWords(1) / 1_000
                        + (long) SHAFT_FRAMES_PER_SECOND * Segment.shaftWords(MOST_PULSES));
        return (int) (words / (Segment.WORDS - Segment.shaftWords(MOST_PULSES)) + 2);
    }

    /**
     * Begins a batch; the reader only.
     *
     * @param nowNanos {@code System.nanoTime()}, the time at which the batch's bytes arrived
     */
    @Override
    @SuppressWarnings("LockNotBeforeTry") // shut() unlocks
    public void open(long nowNanos) {
        lock.lock();
        this.nowNanos = nowNanos;
        while (overflow == Overflow.WAIT && isFull() && !closed) {
            shrunk.awaitUninterruptibly();
        }
    }

    /** Ends the batch and shows it to the recorder. */
    @Override
    public void shut() {
        grown.signal();
        lock.unlock();
    }

    /** Nothing more comes: {@link #await} returns at once, a waiting reader goes on. */
    public void close() {
        lock.lock();
        try {
            closed = true;
            grown.signal();
            shrunk.signal();
        } finally {
            lock.unlock();
        }
    }

    /** Waits until something is there, then {@code millis} longer unless much is there; the recorder only. */
    void await(long millis) throws InterruptedException {
        lock.lockInterruptibly();
        try {
            while (empty && !closed) {
                grown.await();
            }
            long left = TimeUnit.MILLISECONDS.toNanos(millis);
            while (left > 0 && waiting.size() <= 1 && !closed) {
                left = grown.awaitNanos(left);
            }
        } finally {
            lock.unlock();
        }
    }

    /** The oldest piece, or empty; give it back with {@link #recycle}. */
    Optional<Segment> take() {
        lock.lock();
        try {
            Segment oldest = waiting.poll();
            if (waiting.isEmpty()) {
                empty = true;
            }
            return Optional.ofNullable(oldest);
        } finally {
            lock.unlock();
        }
    }

    void recycle(Segment segment) {
        segment.clear();
        lock.lock();
        try {
            if (free.size() < SPARE_SEGMENTS) {
                free.push(segment);
            }
            shrunk.signal();
        } finally {
            lock.unlock();
        }
    }

    /** True when nothing more comes and nothing is left. */
    boolean isDrained() {
        lock.lock();
        try {
            return closed && waiting.isEmpty();
        } finally {
            lock.unlock();
        }
    }

    /** Arrival of the oldest event that waits, by {@code System.nanoTime()}; empty when none does. */
    public Optional<Long> oldestNanos() {
        lock.lock();
        try {
            return empty ? Optional.empty() : Optional.of(oldestNanos);
        } finally {
            lock.unlock();
        }
    }

    /** Samples that found no room. */
    public long lostSamples() {
        lock.lock();
        try {
            return lostSamples;
        } finally {
            lock.unlock();
        }
    }

    /** Shaft frames and others without samples that found no room. */
    public long lostEvents() {
        lock.lock();
        try {
            return lostEvents;
        } finally {
            lock.unlock();
        }
    }

    @Override
    public void begin(OutingStart start, Optional<Long> utcMicros) {
        if (mostSegments > 0) {
            mostSegments = segmentsFor(rate(start.instrument()));
        }
        always(1).begin(start, utcMicros);
        markNumber = 0;
    }

    private static long rate(Instrument instrument) {
        return instrument.rateMillihertz();
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (!hasRoom(Segment.tensionWords(n))) {
            lostSamples += n;
            samplesLostSinceMark += n;
            return;
        }
        tellLoss(number, "before this");
        always(Segment.tensionWords(n)).tension(number, tick, flags, counts, from, n);
        markNumber = number + n;
    }

    private void tellLoss(long atNumber, String where) {
        if (samplesLostSinceMark + eventsLostSinceMark > 0) {
            always(3)
                    .mark(
                            atNumber,
                            "tautlogd: the disk stalled, lost " + where + ": samples " + samplesLostSinceMark
                                    + ", other frames " + eventsLostSinceMark);
            samplesLostSinceMark = 0;
            eventsLostSinceMark = 0;
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        if (hasRoomOrCounts(Segment.shaftWords(n))) {
            always(Segment.shaftWords(n)).shaft(tick, pulses, pulseTicks, n);
        }
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        if (hasRoomOrCounts(8)) {
            always(8).input(atNumber, tick, selector, present, state);
        }
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        always(3).hookup(atNumber, id, by);
    }

    @Override
    public void mark(long atNumber, String note) {
        always(3).mark(atNumber, note);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        if (hasRoomOrCounts(7)) {
            always(7).health(tick, supplyMillivolts, temperatureDecidegrees, lost);
        }
    }

    @Override
    public void clock(long tick, long utcMicros) {
        if (hasRoomOrCounts(5)) {
            always(5).clock(tick, utcMicros);
        }
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        always(4).zero(atNumber, shiftCounts, by);
    }

    @Override
    public void position(Position position) {
        if (hasRoomOrCounts(1)) {
            always(1).position(position);
        }
    }

    @Override
    public void tally(Tally tally) {
        always(1).tally(tally);
    }

    @Override
    public void finding(Finding finding) {
        always(1).finding(finding);
    }

    @Override
    public void second(Second second) {
        always(1).second(second);
    }

    @Override
    public void end() {
        tellLoss(markNumber, "from here to the outing's end");
        always(1).end();
    }

    private boolean isFull() {
        return waiting.size() >= Math.abs(mostSegments);
    }

    private boolean hasRoom(int words) {
        // A reader that waits does so between batches, so that a batch stays whole.
        return overflow == Overflow.WAIT || !isFull() || waiting.getLast().free() >= words;
    }

    private boolean hasRoomOrCounts(int words) {
        if (hasRoom(words)) {
            return true;
        }
        lostEvents++;
        eventsLostSinceMark++;
        return false;
    }

    private Segment always(int words) {
        if (empty) {
            empty = false;
            oldestNanos = nowNanos;
        }
        Segment last = waiting.peekLast();
        if (last == null || last.free() < words) {
            last = free.isEmpty() ? new Segment() : free.pop();
            waiting.add(last);
        }
        return last;
    }
}
