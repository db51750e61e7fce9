package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Second;

/** Turns a span into blocks and blocks into a span. Not thread-safe. */
final class SpanCodec {
    private final SampleCodec samples = new SampleCodec();
    private final PackedCodec packed = new PackedCodec(samples);
    private final ShaftCodec shaft = new ShaftCodec();
    private final ByteWriter content = new ByteWriter();
    private final SampleBlock decoded = new SampleBlock();
    private final ShaftTable decodedShaft = new ShaftTable();

    /** The blocks of {@code span} that are evidence, in the order of the chain: samples, shaft, events. */
    List<Block> evidence(Span span) {
        List<Block> blocks = new ArrayList<>();
        if (span.samples.frames > 0) {
            blocks.add(samples.encode(span.outing, span.index, span.samples));
        }
        if (span.shaft.frames > 0) {
            content.clear();
            shaft.encode(span.shaft, content);
            blocks.add(block(span, Block.Kind.SHAFT, span.shaft.tick[0], span.shaft.frames));
        }
        if (!span.events.isEmpty()) {
            blocks.add(events(Block.Kind.EVENTS, span.outing, span.index, span.events));
        }
        return blocks;
    }

    Block events(Block.Kind kind, int outing, int span, List<Event> events) {
        content.clear();
        EventCodec.encode(events, content);
        return Block.of(kind, outing, span, 0, events.size(), content);
    }

    /** The seconds of {@code span}: none, one block, or more where an outing's are made up for at once. */
    List<Block> seconds(Span span) {
        List<Block> blocks = new ArrayList<>();
        for (int from = 0; from < span.seconds.size(); from += Block.MOST_SECONDS) {
            int to = Math.min(from + Block.MOST_SECONDS, span.seconds.size());
            blocks.add(seconds(span, span.seconds.subList(from, to)));
        }
        return blocks;
    }

    /** One or two seconds take less room without columns. */
    private Block seconds(Span span, List<Second> some) {
        content.clear();
        SecondCodec.encode(some, content);
        Block plain = block(span, Block.Kind.SECONDS, 0, some.size());
        content.clear();
        SecondColumns.encode(some, content);
        Block columns = Block.ofColumns(span.outing, span.index, some.size(), content);
        return columns.size() < plain.size() ? columns : plain;
    }

    private Block block(Span span, Block.Kind kind, long first, int count) {
        return Block.of(kind, span.outing, span.index, first, count, content);
    }

    /** Extends {@code chain} by all that {@link #evidence} gives for {@code span}. */
    static void extend(Chain chain, Span span) {
        if (span.samples.frames > 0) {
            extend(chain, span, Block.Kind.SAMPLES);
        }
        if (span.shaft.frames > 0) {
            extend(chain, span, Block.Kind.SHAFT);
        }
        if (!span.events.isEmpty()) {
            extend(chain, span, Block.Kind.EVENTS);
        }
    }

    /** Extends {@code chain} by the block of one kind that holds what {@code span} holds. */
    static void extend(Chain chain, Span span, Block.Kind kind) {
        switch (kind) {
            case SAMPLES -> chain.addSamples(span.outing, span.index, span.samples);
            case SHAFT -> chain.addShaft(span.outing, span.index, span.shaft);
            default -> chain.addEvents(kind, span.outing, span.index, span.events);
        }
    }

    /** Appends what {@code block} holds to {@code span}, all of it or, where it is refused, nothing; counts are decoded and held against the runs' bounds. */
    void append(Block block, Span span) throws DamagedBlockException {
        try {
            switch (block.kind()) {
                case SAMPLES -> appendSamples(block, span);
                case SHAFT -> appendShaft(block, span);
                case SECONDS -> span.seconds.addAll(seconds(block));
                case START, EVENTS, END, THINNING ->
                    span.events.addAll(EventCodec.decode(block.content(), block.count()));
            }
        } catch (IndexOutOfBoundsException | ArithmeticException | IllegalArgumentException e) {
            throw malformed(e);
        }
    }

    private static List<Second> seconds(Block block) {
        return block.isInColumns()
                ? SecondColumnsReader.decode(block.content(), block.count())
                : SecondCodec.decode(block.content(), block.count());
    }

    /** A block coded for keeping; the block itself when that is no smaller, or its readings are gone. */
    Block pack(Block block) throws DamagedBlockException {
        if (block.isThinned() || block.isPacked()) {
            return block;
        }
        if (block.kind() != Block.Kind.SAMPLES) {
            return block.deflated();
        }
        content.clear();
        packed.encode(whole(block), content);
        Block smaller = block.packed(content);
        return smaller.size() < block.size() ? smaller : block;
    }

    private void appendSamples(Block block, Span span) throws DamagedBlockException {
        span.samples.addAll(whole(block));
    }

    /** Frames and all counts of a block of samples, held against the runs' bounds; valid until another block is read. */
    FrameTable whole(Block block) throws DamagedBlockException {
        requireReadings(block);
        try {
            if (block.isPacked()) {
                packed.decode(block.content(), block.first(), block.count(), decoded.table);
            } else {
                samples.decode(block, decoded);
                decoded.counts();
                decoded.requireBounds();
            }
            return decoded.table;
        } catch (IndexOutOfBoundsException | ArithmeticException | IllegalArgumentException e) {
            throw malformed(e);
        }
    }

    private void appendShaft(Block block, Span span) {
        if (span.shaft.frames == 0) {
            shaft.decode(block.content(), block.count(), span.shaft);
            return;
        }
        shaft.decode(block.content(), block.count(), decodedShaft);
        ShaftTable from = decodedShaft;
        for (int i = 0; i < from.frames; i++) {
            span.shaft.add(
                    from.tick[i], from.pulses[i], from.samplesBefore[i], from.pulseTick, from.from[i], from.length(i));
        }
    }

    /** Reads frames and runs of a block of samples; its counts are decoded on demand. Nothing is left of one that is refused. */
    void read(Block block, SampleBlock into) throws DamagedBlockException {
        requireReadings(block);
        try {
            if (block.isPacked()) {
                packed.decode(block.content(), block.first(), block.count(), into.table);
                into.openRuns();
            } else {
                samples.decode(block, into);
            }
        } catch (IndexOutOfBoundsException | ArithmeticException | IllegalArgumentException e) {
            into.clear();
            throw malformed(e);
        }
    }

    /** Reads only the frames of a block of samples: numbers, ticks, flags. Nothing is left of one that is refused. */
    void readFrames(Block block, FrameTable into) throws DamagedBlockException {
        requireReadings(block);
        try {
            samples.decodeFrames(block.content(), block.first(), block.count(), into);
        } catch (IndexOutOfBoundsException | ArithmeticException | IllegalArgumentException e) {
            into.clear();
            throw malformed(e);
        }
    }

    private static void requireReadings(Block block) throws DamagedBlockException {
        if (block.isThinned()) {
            throw new DamagedBlockException("its readings were thinned out");
        }
    }

    private static DamagedBlockException malformed(RuntimeException e) {
        return new DamagedBlockException("its content cannot be read (" + e.getMessage() + ")", e);
    }
}
