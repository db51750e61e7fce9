package tautlog.recording;

import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * Holds what an outing told until it is committed.
 *
 * <pre>
 *   calls ──▶ current span ──(no more room)──▶ full spans
 *                  │                               │
 *             commit: new part as tail row    commit: blocks, their tail rows deleted
 * </pre>
 *
 * Nothing is forgotten before the disk has it: a commit that fails leaves all this as it was.
 */
final class OutingJournal implements OutingWriter {
    private final RecordingRows rows;
    private final int outing;
    private final int cutOff;
    private final Deque<Span> full = new ArrayDeque<>();
    private final List<Finding> findings = new ArrayList<>();
    private Span current;
    private SpanMark done = SpanMark.START;
    private boolean ended;
    private boolean closed;

    /** @param cutOff 1 when a power cut ended the outing before, else 0 */
    OutingJournal(RecordingRows rows, int outing, int span, int cutOff) {
        this.rows = rows;
        this.outing = outing;
        this.cutOff = cutOff;
        this.current = new Span(outing, span);
    }

    int outing() {
        return outing;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        requireOpen();
        if (n < 1) {
            throw new IllegalArgumentException("n must be 1 or more, was " + n);
        }
        FrameTable samples = current.samples;
        if (samples.frames > 0 && number < samples.nextNumber()) {
            throw new IllegalArgumentException("number must be " + samples.nextNumber() + " or more, was " + number);
        }
        if (!current.hasRoomForSamples(n)) {
            closeSpan();
        }
        current.samples.add(number, tick, flags, counts, from, n);
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        requireOpen();
        if (!current.hasRoomForPulses(n)) {
            closeSpan();
        }
        current.addShaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        add(Event.of(Event.Type.INPUT, atNumber, tick, selector, present, state));
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        add(Event.of(Event.Type.HOOKUP, List.of(id, by.name()), atNumber));
    }

    @Override
    public void mark(long atNumber, String note) {
        add(Event.of(Event.Type.MARK, List.of(note), atNumber));
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        add(Event.of(Event.Type.HEALTH, tick, supplyMillivolts, temperatureDecidegrees, lost));
    }

    @Override
    public void clock(long tick, long utcMicros) {
        add(Event.of(Event.Type.CLOCK, tick, utcMicros));
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        add(Event.of(Event.Type.ZERO, List.of(by.name()), atNumber, shiftCounts));
    }

    @Override
    public void position(Position position) {
        add(Event.position(position));
    }

    @Override
    public void tally(Tally tally) {
        add(Event.tally(tally));
    }

    private void add(Event event) {
        requireOpen();
        if (!current.hasRoomForEvent()) {
            closeSpan();
        }
        current.addEvent(event);
    }

    @Override
    public void finding(Finding finding) {
        requireNotClosed();
        findings.add(finding);
    }

    @Override
    public void second(Second second) {
        requireNotClosed();
        current.seconds.add(second);
    }

    @Override
    public void end() {
        requireOpen();
        ended = true;
    }

    private void requireOpen() {
        if (ended) {
            throw new IllegalStateException("the outing has ended, nothing can follow");
        }
    }

    private void requireNotClosed() {
        if (closed) {
            throw new IllegalStateException("the outing is closed on the disk, nothing can follow");
        }
    }

    private void closeSpan() {
        full.add(current);
        current = new Span(outing, current.index + 1);
    }

    @Override
    public void commit() throws RecordingException {
        if (closed && findings.isEmpty()) {
            return;
        }
        try {
            rows.transaction();
            write();
            rows.commit();
        } catch (SQLException e) {
            throw rows.failed(e);
        }
        forget();
    }

    private void write() throws SQLException {
        for (Span span : full) {
            rows.seal(span);
        }
        if (ended) {
            if (!current.isEmpty()) {
                rows.seal(current);
            }
            Event end = Event.of(Event.Type.END, cutOff);
            rows.end(outing, current.index + 1, end, Reach.of(current));
        } else {
            SpanMark from = full.isEmpty() ? done : SpanMark.START;
            if (!from.equals(SpanMark.endOf(current))) {
                rows.tail(from.rest(current));
            }
        }
        for (Finding finding : findings) {
            rows.finding(outing, finding);
        }
    }

    /** The disk has it: what is sealed or said need not be kept. */
    private void forget() {
        full.clear();
        findings.clear();
        done = SpanMark.endOf(current);
        closed = ended;
    }

    @Override
    public String lastLink() {
        Chain chain = rows.chain();
        if (!closed) {
            Span oldest = full.isEmpty() ? current : full.getFirst();
            SpanCodec.extend(chain, done.upTo(oldest));
        }
        return chain.hex();
    }

    @Override
    public String sealedLink() {
        return rows.chain().hex();
    }
}
