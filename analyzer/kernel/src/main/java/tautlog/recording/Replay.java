package tautlog.recording;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;

/** Tells one outing again, span by span. A damaged block is left out and named, a missing one is named; the rest is told. */
final class Replay {
    private final Rows rows;
    private final Outing outing;
    private final Evidence sink;
    private final Consumer<EvidenceRow> seen;
    private final SpanCodec codec = new SpanCodec();
    private final SampleBlock samples = new SampleBlock();
    private final List<Damage> damages = new ArrayList<>();
    private final Span others;
    private final MissingRows missing;
    private boolean hasSamples;
    private boolean hookupIsLost;
    private int asideFrom = Integer.MAX_VALUE;

    Replay(Rows rows, Outing outing, Evidence sink) {
        this(rows, outing, sink, row -> {});
    }

    /** @param seen takes each row of evidence before it is told, readable or not */
    Replay(Rows rows, Outing outing, Evidence sink, Consumer<EvidenceRow> seen) {
        this.rows = rows;
        this.outing = outing;
        this.sink = sink;
        this.seen = seen;
        this.others = new Span(outing.index(), -1);
        this.missing = new MissingRows(rows);
    }

    List<Damage> run() throws SQLException {
        readAside();
        rows(Long.MIN_VALUE, Long.MAX_VALUE);
        return tail();
    }

    /** Tells what was sealed behind row {@code after}; the last row told, {@code after} when there is none. */
    long sealedBehind(long after) throws SQLException {
        readAside();
        missing.goOnAfter(after);
        return Math.max(after, rows(after + 1, Long.MAX_VALUE));
    }

    /** Tells what is committed and not sealed yet, and the end. */
    List<Damage> tail() throws SQLException {
        tellTail();
        if (outing.closed()) {
            sink.end();
        }
        return damages;
    }

    /** Tells the rows of the outing from {@code first} to {@code last}, whole spans; the last one told, 0 when there is none. */
    long rows(long first, long last) throws SQLException {
        long told = rows.evidence(outing.index(), first, last, row -> {
            seen.accept(row);
            take(row);
        });
        tellSpan();
        return told;
    }

    private void readAside() throws SQLException {
        TailRows.Aside aside = TailRows.Aside.read(rows, outing.index(), codec);
        aside.damaged().forEach((id, reason) -> damages.add(EvidenceRow.tailDamage(outing, id, reason)));
        asideFrom = aside.span();
    }

    private void take(EvidenceRow row) throws SQLException {
        MissingRows.Gone gone = missing.before(row);
        if (gone != MissingRows.Gone.NOTHING) {
            damages.add(row.missingBefore(
                    missing.last() + 1,
                    EvidenceRow.time(outing.utcMicros(row.reach().firstTick()))));
        }
        missing.take(row);
        hookupIsLost |= gone == MissingRows.Gone.EVENTS_FROM_BEFORE;
        if (row.span() != others.index) {
            tellSpan();
            others.restart(row.span());
            loseHookupFrom(row.span());
        }
        hookupIsLost |= gone == MissingRows.Gone.EVENTS_FROM_HERE;
        try {
            read(row.open());
        } catch (DamagedBlockException e) {
            damages.add(row.damage(outing, String.valueOf(e.getMessage())));
            hookupIsLost |= !row.is(Block.Kind.SAMPLES) && !row.is(Block.Kind.SHAFT);
        }
    }

    private void loseHookupFrom(int span) {
        if (span >= asideFrom) {
            hookupIsLost = true;
            asideFrom = Integer.MAX_VALUE;
        }
    }

    private void read(Block block) throws DamagedBlockException {
        if (block.isThinned() && outing.thinned()) {
            return; // its samples are not told
        }
        if (block.kind() == Block.Kind.SAMPLES) {
            if (hasSamples) {
                throw new DamagedBlockException("it is a second block of samples in its span");
            }
            codec.read(block, samples);
            hasSamples = true;
        } else {
            codec.append(block, others);
        }
    }

    private void tellTail() throws SQLException {
        TailRows tail = TailRows.read(rows, outing.index(), codec);
        tail.damaged().forEach((id, reason) -> damages.add(EvidenceRow.tailDamage(outing, id, reason)));
        hookupIsLost |= !tail.damaged().isEmpty();
        others.restart(tail.span().index);
        loseHookupFrom(others.index);
        for (Block block : codec.evidence(tail.span())) {
            try {
                read(block);
            } catch (DamagedBlockException e) {
                throw new IllegalStateException("a block that was just made cannot be read", e);
            }
        }
        tellSpan();
    }

    private void tellSpan() {
        tellLostHookup();
        SpanOrder order = new SpanOrder(others.shaft, others.events);
        if (hasSamples) {
            if (sink instanceof RunSink runs) {
                tellRuns(order, runs);
            } else {
                tellFrames(order);
            }
        }
        order.tellRest(sink);
        others.restart(-1);
        hasSamples = false;
    }

    /** Events were lost, and with them perhaps a change of hookup: until the next naming nobody knows which is on. */
    private void tellLostHookup() {
        if (!hookupIsLost) {
            return;
        }
        LongStream named = others.events.stream().filter(Event::isKeyedByNumber).mapToLong(event -> event.numbers()[0]);
        LongStream taken = hasSamples ? LongStream.of(samples.table.number[0]) : LongStream.empty();
        OptionalLong first = LongStream.concat(named, taken).min();
        if (first.isPresent()) {
            sink.hookup(first.getAsLong(), Evidence.UNKNOWN_HOOKUP, HookupSource.LOWEST);
            hookupIsLost = false;
        }
    }

    private void tellFrames(SpanOrder order) {
        FrameTable frames = samples.table;
        int[] counts = samples.counts();
        for (int i = 0; i < frames.frames; i++) {
            int n = frames.length(i);
            order.tellBefore(i, frames.number[i] + n - 1, sink);
            sink.tension(frames.number[i], frames.tick[i], frames.flags[i], counts, frames.from[i], n);
        }
    }

    private void tellRuns(SpanOrder order, RunSink runs) {
        TablePassage passage = new TablePassage(samples, others.shaft, order);
        int frame = 0;
        for (int run = 0; run < samples.runs(); ) {
            int end = passage.begin(run, frame);
            if (end > run && runs.passage(passage)) {
                frame = passage.endFrame();
                order.toldShaftsBefore(passage.endShaft());
                run = end;
            } else {
                for (int refused = Math.max(end, run + 1); run < refused; run++) {
                    frame = tellRun(order, runs, run, frame);
                }
            }
        }
    }

    /** Tells the frames from {@code frame} on that begin in run {@code run}, and the run; returns the frame behind these. */
    private int tellRun(SpanOrder order, RunSink runs, int run, int frame) {
        FrameTable frames = samples.table;
        int next = frame;
        int told = samples.runFrom(run);
        int end = told + samples.runLength(run);
        for (; next < frames.frames && frames.from[next] < end; next++) {
            int n = frames.length(next);
            long lastNumber = frames.number[next] + n - 1;
            if (order.isEventDue(next, lastNumber)) {
                tellPart(runs, run, told, frames.from[next]);
                told = frames.from[next];
            }
            order.tellBefore(next, lastNumber, runs);
            runs.frame(frames.number[next], frames.tick[next], frames.flags[next], n);
        }
        tellPart(runs, run, told, end);
        return next;
    }

    private void tellPart(RunSink runs, int run, int from, int end) {
        if (from < end) {
            int skip = from - samples.runFrom(run);
            runs.run(
                    samples.runNumber(run) + skip,
                    samples.runFlags(run),
                    samples.run(run).part(skip, end - from));
        }
    }
}
