package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Detection;
import tautlog.detect.FindingSink;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** A hundred blocks of {@link BenchTrace}, coded, in memory. */
public final class BenchBlocks {
    private static final int BLOCKS = 100;
    private static final int FRAME = 25;
    private static final int FRAMES = Block.SAMPLES / FRAME;

    /** How many samples one call goes through. */
    public static final int SAMPLES = BLOCKS * FRAMES * FRAME;

    private final List<byte[]> coded = new ArrayList<>();
    private final List<byte[]> packed = new ArrayList<>();
    private final List<FrameTable> tables = new ArrayList<>();
    private final SpanCodec codec = new SpanCodec();
    private final SampleCodec encoder = new SampleCodec();
    private final SampleBlock block = new SampleBlock();

    public BenchBlocks(int noise, double countsPerNewton) {
        BenchTrace trace = new BenchTrace(1, noise, countsPerNewton);
        int[] counts = new int[FRAME];
        long number = 0;
        for (int i = 0; i < BLOCKS; i++) {
            FrameTable table = new FrameTable();
            for (int f = 0; f < FRAMES; f++) {
                trace.fill(counts, 0, FRAME);
                table.add(number, number * 2_000 + f % 3, 0, counts, 0, FRAME);
                number += FRAME;
            }
            tables.add(table);
            coded.add(encoder.encode(0, i, table).bytes());
        }
        coded.forEach(bytes -> packed.add(packed(bytes)));
    }

    private byte[] packed(byte[] bytes) {
        try {
            return codec.pack(Block.read(bytes, 0)).bytes();
        } catch (DamagedBlockException e) {
            throw new IllegalStateException(e);
        }
    }

    public int decode() {
        return decode(coded);
    }

    public int decodePacked() {
        return decode(packed);
    }

    private int decode(List<byte[]> blocks) {
        int sum = 0;
        for (byte[] bytes : blocks) {
            read(bytes);
            sum += block.counts()[block.samples() - 1];
        }
        return sum;
    }

    /** Packs a tenth of the blocks. */
    public int pack() {
        int sum = 0;
        for (byte[] bytes : coded.subList(0, BLOCKS / 10)) {
            sum += packed(bytes).length;
        }
        return sum;
    }

    /** Packed blocks through the chain of links, as {@code verify} walks it. */
    public int linkPacked() {
        Chain chain = new Chain();
        try {
            for (byte[] bytes : packed) {
                chain.addSamples(0, 1, codec.whole(Block.read(bytes, 0)));
            }
        } catch (DamagedBlockException e) {
            throw new IllegalStateException(e);
        }
        return chain.link()[0];
    }

    /** Blocks through all detectors, run by run. */
    public long detect(FindingSink sink) {
        return detect(coded, sink);
    }

    /** Packed blocks through all detectors, run by run. */
    public long detectPacked(FindingSink sink) {
        return detect(packed, sink);
    }

    private long detect(List<byte[]> blocks, FindingSink sink) {
        Instrument instrument = new Instrument("BENCH", 1, 0, 1, 1_000_000, 500_000, 8_388_607, 6);
        Detection detection =
                new Detection(instrument, Rigs.withLimit("20000", "8000"), Calibration.of("0", "0.5"), sink);
        for (byte[] bytes : blocks) {
            read(bytes);
            detect(detection);
        }
        detection.end();
        return SAMPLES;
    }

    /** Frames are announced before the run that they begin in. */
    private void detect(Detection detection) {
        int frame = 0;
        for (int run = 0; run < block.runs(); run++) {
            int end = block.runFrom(run) + block.runLength(run);
            for (; frame < block.frames() && block.table.from[frame] < end; frame++) {
                detection.frame(
                        block.frameNumber(frame),
                        block.frameTick(frame),
                        block.frameFlags(frame),
                        block.frameLength(frame));
            }
            detection.run(block.runNumber(run), block.run(run));
        }
    }

    public int decodeLeastAndGreatest() {
        int sum = 0;
        for (byte[] bytes : coded) {
            read(bytes);
            sum += block.run(block.runs() - 1).greatest();
        }
        return sum;
    }

    private void read(byte[] bytes) {
        try {
            codec.read(Block.read(bytes, 0), block);
        } catch (DamagedBlockException e) {
            throw new IllegalStateException(e);
        }
    }

    public int encode() {
        int sum = 0;
        for (FrameTable table : tables) {
            sum += encoder.encode(0, 0, table).size();
        }
        return sum;
    }
}
