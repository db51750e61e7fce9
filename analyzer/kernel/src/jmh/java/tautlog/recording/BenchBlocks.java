package tautlog.recording;

import java.util.ArrayList;
import java.util.List;

/** A hundred blocks of {@link BenchTrace}, coded, in memory. */
public final class BenchBlocks {
    private static final int BLOCKS = 100;
    private static final int FRAME = 25;
    private static final int FRAMES = Block.SAMPLES / FRAME;

    /** How many samples one call goes through. */
    public static final int SAMPLES = BLOCKS * FRAMES * FRAME;

    private final List<byte[]> coded = new ArrayList<>();
    private final List<FrameTable> tables = new ArrayList<>();
    private final SpanCodec codec = new SpanCodec();
    private final SampleCodec encoder = new SampleCodec();
    private final ByteWriter content = new ByteWriter();
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
            content.clear();
            encoder.encode(table, content);
            coded.add(Block.of(Block.Kind.SAMPLES, 0, i, table.number[0], table.samples(), content)
                    .bytes());
        }
    }

    public int decode() {
        int sum = 0;
        for (byte[] bytes : coded) {
            read(bytes);
            sum += block.counts()[block.samples() - 1];
        }
        return sum;
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
            content.clear();
            encoder.encode(table, content);
            sum += content.size();
        }
        return sum;
    }
}
