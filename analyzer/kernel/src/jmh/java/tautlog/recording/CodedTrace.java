package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** A trace as a recording keeps it, in memory: coded blocks of frames of 50 samples, 2,000 ticks a sample, without a gap. */
public final class CodedTrace {
    /** Ticks a sample: 500 Hz by a tick of a microsecond. */
    public static final long TICKS_PER_SAMPLE = 2_000;

    private static final int FRAME = 50;
    private static final int FRAMES = Block.SAMPLES / FRAME;

    /** How many samples a block holds, but for the last. */
    public static final int BLOCK_SAMPLES = FRAMES * FRAME;

    private final List<byte[]> blocks = new ArrayList<>();

    /** Takes a trace block by block. */
    public interface Reader {
        /** A frame begins; its samples come by {@link #run}. */
        void frame(long number, long tick, int flags, int n);

        /** The next samples, coded until somebody asks for them. */
        void run(long number, StoredCounts counts);

        /** As {@link RunSink#passage}. */
        default boolean passage(Passage passage) {
            return false;
        }
    }

    /** Codes {@code counts}. */
    public static CodedTrace of(int[] counts) {
        CodedTrace trace = new CodedTrace();
        for (int at = 0; at < counts.length; at += BLOCK_SAMPLES) {
            trace.add(counts, at, Math.min(BLOCK_SAMPLES, counts.length - at));
        }
        return trace;
    }

    private void add(int[] counts, int from, int n) {
        FrameTable table = new FrameTable();
        for (int at = from; at < from + n; at += FRAME) {
            table.add(at, at * TICKS_PER_SAMPLE, 0, counts, at, Math.min(FRAME, from + n - at));
        }
        blocks.add(new SampleCodec().encode(0, blocks.size(), table).bytes());
    }

    public int blocks() {
        return blocks.size();
    }

    public long bytes() {
        return blocks.stream().mapToLong(block -> block.length).sum();
    }

    /** Reads the blocks from {@code from} to {@code to − 1}, checksums too; several threads may. */
    public void read(int from, int to, Reader reader) {
        SpanCodec codec = new SpanCodec();
        SampleBlock block = new SampleBlock();
        ShaftTable none = new ShaftTable();
        TablePassage passage = new TablePassage(block, none, new SpanOrder(none, List.of()));
        for (byte[] bytes : blocks.subList(from, to)) {
            try {
                codec.read(Block.read(bytes, 0), block);
            } catch (DamagedBlockException e) {
                throw new IllegalStateException(e);
            }
            read(block, passage, reader);
        }
    }

    /** As a replay does it. */
    private static void read(SampleBlock block, TablePassage passage, Reader reader) {
        int frame = 0;
        for (int run = 0; run < block.runs(); ) {
            int end = passage.begin(run, frame);
            if (end > run && reader.passage(passage)) {
                frame = passage.endFrame();
                run = end;
            } else {
                for (int refused = Math.max(end, run + 1); run < refused; run++) {
                    frame = readRun(block, run, frame, reader);
                }
            }
        }
    }

    /** Frames are announced before the run that they begin in. */
    private static int readRun(SampleBlock block, int run, int firstFrame, Reader reader) {
        int end = block.runFrom(run) + block.runLength(run);
        int frame = firstFrame;
        for (; frame < block.frames() && block.table.from[frame] < end; frame++) {
            reader.frame(
                    block.frameNumber(frame),
                    block.frameTick(frame),
                    block.frameFlags(frame),
                    block.frameLength(frame));
        }
        reader.run(block.runNumber(run), block.run(run));
        return frame;
    }
}
