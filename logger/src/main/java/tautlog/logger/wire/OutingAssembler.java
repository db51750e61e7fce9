package tautlog.logger.wire;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tautlog.sample.Instrument;
import tautlog.sample.Tally;

/**
 * Makes outings of frames. Source: {@code firmware-notes/wire.md}, "Reading it". Knows no clock: {@link #arriving} gives
 * the time. Not thread-safe.
 *
 * <pre>
 *              first HELLO, HELLO of another boot               silence &gt; 2³⁰ ticks, HELLO of another boot, end
 *   frames ──▶ held (2 s) ────────────────────────▶ an outing ────────────────────────────────────▶ Evidence.end
 *                  ▲                                    │  not after the last of its kind
 *                  └────────────────────────────────────┘  (with all that follow, until it is decided)
 * </pre>
 *
 * <p>What happens when:
 *
 * <ul>
 *   <li><b>No HELLO yet</b>: frames are held, in order. One that has waited for more than 2 s is lost and counted
 *       ({@link Tally#heldFrames}). The first HELLO begins an outing with the frames still held. When one of
 *       them was not made in the 2 s before the HELLO by the instrument's own counter, or when numbers among them start
 *       again, the instrument has restarted: that one or those before belong to no HELLO, are lost and counted.
 *   <li><b>HELLO of the same instrument and boot</b>: nothing, but that it decides about held frames.
 *   <li><b>HELLO that says anything else</b> (another boot, id, rate, …): the outing ends, another begins; frames held
 *       belong to the new one, as with the first HELLO.
 *   <li><b>Silence</b> of more than 2³⁰ ticks, by the tick of the next frame or by the time of {@link #arriving}: the
 *       outing ends; the next frames are held until a HELLO begins another.
 *   <li><b>TENSION whose number is not after the last, or whose tick is before the last</b>, and SHAFT, HEALTH, INPUT
 *       with a tick before the last of the same kind, SHAFT with fewer pulses: held, and every frame that follows too. The next
 *       HELLO decides: another boot, and they begin a new outing; the same boot, and those are repeats, dropped and
 *       counted ({@link Tally#repeatedFrames}), and the others are passed on. A TENSION frame that goes on exactly where
 *       the outing left off, in number and (to an eighth) in time, proves the same boot as well. When neither comes
 *       within 2 s, they are lost and counted.
 *   <li><b>SHAFT or HEALTH at the same tick as the last, HELLO not after the last</b>: a repeat, dropped and counted.
 *       So is a SHAFT frame whose pulses, or their number, contradict the frame before; the next one then shows a gap in
 *       the pulse train.
 *   <li><b>A jump in numbers</b>: nothing; it is a gap for who reads the evidence.
 *   <li><b>HELLO of a boot that was heard before another</b>, within 10 s: two instruments speak on the line. The outing ends
 *       with a mark, all frames are left out and counted ({@code TWO_INSTRUMENTS}) until one of them has been alone for 5 s.
 *   <li><b>INPUT</b>: passed on when something changed, at the number of the next sample expected. A mark button that
 *       goes down is a mark; so is one that is down in the outing's first INPUT. After more than 3 s without an INPUT one
 *       is passed on in which clutch and brake are not present.
 *   <li><b>TENSION of a channel other than 0</b>: ignored, counted in {@link LineCounts#otherChannelFrames}.
 *   <li><b>Sequence numbers</b> are compared in the order in which frames are dealt with; they only feed
 *       {@link Tally#lostFrames}. The step into a new boot, or across a long silence, is not compared.
 *   <li><b>The tally</b> is passed on when it has changed, at most once a second, and at the outing's end. What was counted
 *       between two outings goes to the later one; when none follows, {@link #counts} alone tells it.
 * </ul>
 */
public final class OutingAssembler implements FrameSink {
    private static final long TALLY_NANOS = 1_000_000_000L;

    private final OutingSink sink;
    private final LineTally tally = new LineTally();
    private final HeldFrames held = new HeldFrames(tally);
    private final Sources sources = new Sources();
    private @Nullable OpenOuting outing;
    private long bootLast = -1;
    private long nowNanos;
    private long heardNanos;
    private long tallyNanos;
    private long otherChannelFrames;

    public OutingAssembler(OutingSink sink) {
        this.sink = sink;
    }

    /**
     * What comes next arrived at {@code nanos} of a clock that never goes back and starts anywhere. Call it before each
     * feeding of the decoder, and once a second when nothing comes.
     */
    public void arriving(long nanos) {
        nowNanos = nanos;
        held.expire(nanos);
        if (outing != null && nanos - tallyNanos >= TALLY_NANOS && tally.takeChange()) {
            tallyNanos = nanos;
            outing.tally(tally.tally());
        }
    }

    /** Another line was opened; the outing goes on. */
    public void opened() {
        sources.forget();
    }

    /** The stream is over: ends the outing. Frames held belong to it, as if a HELLO of the same boot had come. */
    public void end() {
        if (outing != null) {
            close(outing);
        } else {
            held.loseAll();
        }
    }

    /** What was counted since the last outing ended, or since this outing began. */
    public LineCounts counts() {
        return new LineCounts(tally.tally(), otherChannelFrames, state());
    }

    private LineCounts.OutingState state() {
        if (sources.areTwo(nowNanos)) {
            return LineCounts.OutingState.TWO_INSTRUMENTS;
        }
        return outing == null ? LineCounts.OutingState.NONE : LineCounts.OutingState.ON;
    }

    @Override
    public void rejected(FrameFault fault) {
        tally.rejected(fault);
    }

    @Override
    public void hello(int seq, Instrument instrument, long tick) {
        closeAfterSilence(tick);
        sources.hello(instrument, nowNanos);
        if (isOfTwo()) {
            return;
        }
        OpenOuting current = outing;
        if (current != null && current.instrument().equals(instrument)) {
            releaseHeld(current);
        } else {
            current = begin(current, instrument, tick);
        }
        tally.heard(seq);
        count(current.hello(tick));
    }

    /** True when two instruments speak: this frame could be either's. */
    private boolean isOfTwo() {
        if (!sources.areTwo(nowNanos)) {
            return false;
        }
        tally.ofTwo();
        tally.forgetSeq();
        held.loseAll();
        OpenOuting mixed = outing;
        if (mixed != null) {
            mixed.mark(
                    "tautlogd: two instruments speak on this line; the last seconds up to here, those of the outing before"
                            + " included, may be of both");
            finish(mixed);
        }
        return true;
    }

    private OpenOuting begin(@Nullable OpenOuting before, Instrument instrument, long helloTick) {
        if (before != null) {
            finish(before);
        }
        boolean isOtherBoot = bootLast >= 0 && bootLast != instrument.boot();
        if (held.keepThoseOf(instrument, helloTick) || isOtherBoot) {
            tally.forgetSeq();
        }
        bootLast = instrument.boot();
        tallyNanos = nowNanos;
        OpenOuting next = new OpenOuting(
                instrument, held.isEmpty() ? helloTick : held.first().tick(), sink);
        outing = next;
        releaseHeld(next);
        return next;
    }

    @Override
    public void tension(int seq, long tick, long number, int flags, int[] counts, int n) {
        if (isOfTwo()) {
            return;
        }
        if (flags >> 4 != 0) {
            otherChannelFrames++;
            otherChannel(seq, tick);
            return;
        }
        OpenOuting current = outingFor(tick);
        if (current != null && !held.isEmpty() && current.isContinuedBy(tick, number)) {
            releaseHeld(current);
        }
        if (current == null || !held.isEmpty() || !isTaken(seq, current.tension(tick, number, flags, counts, n))) {
            held.add(nowNanos, new HeldFrame.Tension(seq, tick, number, flags, Arrays.copyOf(counts, n)));
        }
    }

    private void otherChannel(int seq, long tick) {
        if (outingFor(tick) == null || !held.isEmpty()) {
            held.add(nowNanos, new HeldFrame.OtherChannel(seq, tick));
        } else {
            tally.heard(seq);
        }
    }

    @Override
    public void shaft(int seq, long tick, long pulses, int[] ages, int n) {
        if (isOfTwo()) {
            return;
        }
        OpenOuting current = outingFor(tick);
        if (current == null || !held.isEmpty() || !isTaken(seq, current.shaft(tick, pulses, ages, n))) {
            held.add(nowNanos, new HeldFrame.Shaft(seq, tick, pulses, Arrays.copyOf(ages, n)));
        }
    }

    @Override
    public void health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        if (isOfTwo()) {
            return;
        }
        OpenOuting current = outingFor(tick);
        if (current == null
                || !held.isEmpty()
                || !isTaken(seq, current.health(tick, supplyMillivolts, temperatureDecidegrees, lost))) {
            held.add(nowNanos, new HeldFrame.Health(seq, tick, supplyMillivolts, temperatureDecidegrees, lost));
        }
    }

    @Override
    public void input(int seq, long tick, int selector, int present, int state) {
        if (isOfTwo()) {
            return;
        }
        OpenOuting current = outingFor(tick);
        if (current == null || !held.isEmpty() || !isTaken(seq, current.input(tick, selector, present, state))) {
            held.add(nowNanos, new HeldFrame.Input(seq, tick, selector, present, state));
        }
    }

    private @Nullable OpenOuting outingFor(long tick) {
        closeAfterSilence(tick);
        return outing;
    }

    private void closeAfterSilence(long tick) {
        OpenOuting current = outing;
        if (current != null && current.isSilentBefore(tick, nowNanos - heardNanos)) {
            close(current);
            tally.forgetSeq();
        }
        heardNanos = nowNanos;
    }

    private boolean isTaken(int seq, Verdict verdict) {
        if (verdict == Verdict.UNDECIDED) {
            return false;
        }
        tally.heard(seq);
        count(verdict);
        return true;
    }

    /** Deals with the frames held as of {@code current}'s boot. */
    private void releaseHeld(OpenOuting current) {
        while (!held.isEmpty()) {
            HeldFrame frame = held.removeFirst();
            tally.heard(frame.seq());
            count(frame.offerTo(current));
        }
    }

    private void count(Verdict verdict) {
        if (verdict != Verdict.TAKEN) {
            tally.repeated();
        }
    }

    private void close(OpenOuting current) {
        releaseHeld(current);
        finish(current);
    }

    private void finish(OpenOuting current) {
        outing = null;
        current.tally(tally.tally());
        tally.clear();
        current.end();
    }
}
