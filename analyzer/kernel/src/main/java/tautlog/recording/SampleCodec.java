package tautlog.recording;

/** Codes a block of samples. Layout: {@code analyzer/RECORDING.md}, "Samples". Not thread-safe. */
final class SampleCodec {
    /** From so many full runs on they stand in planes; chosen: of fewer the last plane, which is read bit by bit, is too great a part. */
    static final int FULL_RUNS_OF_PLANES = 16;

    private final RunCodec codec = new RunCodec();
    private final ByteWriter content = new ByteWriter();
    private final ByteWriter payload = new ByteWriter();
    private long[] column = new long[1024];

    private final Planes planes = new Planes();
    private final RunDirectory directory = new RunDirectory();

    /** The samples of {@code table} as a block. */
    Block encode(int outing, int span, FrameTable table) {
        content.clear();
        encodeFrames(table, content);
        boolean isInPlanes = fullRuns(table) >= FULL_RUNS_OF_PLANES;
        encodeRuns(table, isInPlanes);
        return Block.ofSamples(isInPlanes, outing, span, table.number[0], table.samples(), content);
    }

    private static int fullRuns(FrameTable table) {
        int full = 0;
        for (int frame = 0; frame < table.frames; frame = table.endOfStretch(frame)) {
            full += (table.from[table.endOfStretch(frame)] - table.from[frame]) / RunCodec.RUN;
        }
        return full;
    }

    private void encodeRuns(FrameTable table, boolean isInPlanes) {
        directory.clear();
        payload.clear();
        planes.clear();
        for (int frame = 0; frame < table.frames; ) {
            int next = table.endOfStretch(frame);
            int end = table.from[next];
            for (int at = table.from[frame]; at < end; at += RunCodec.RUN) {
                int n = Math.min(RunCodec.RUN, end - at);
                codec.encode(table.counts, at, n, directory, isInPlanes && n == RunCodec.RUN ? planes : payload);
            }
            frame = next;
        }
        if (isInPlanes) {
            directory.writeColumns(content);
            planes.writeTo(content);
        } else {
            directory.writeEntries(content);
        }
        content.raw(payload.array(), 0, payload.size());
        content.i32(0); // so that eight bytes can be loaded from any byte of a run
    }

    /** Appends the frames: lengths, numbers, ticks, flags. */
    void encodeFrames(FrameTable table, ByteWriter out) {
        int n = table.frames;
        room(n);
        out.varint(n);
        long slope = ticksPerSample(table);
        for (int i = 0; i < n; i++) {
            column[i] = table.length(i);
        }
        LongColumn.encode(column, n, out);
        for (int i = 0; i < n; i++) {
            column[i] = i == 0 ? 0 : table.number[i] - table.number[i - 1] - table.length(i - 1);
        }
        LongColumn.encode(column, n, out);
        out.zigzag(slope);
        for (int i = 0; i < n; i++) {
            column[i] = table.tick[i] - expectedTick(table, i, slope);
        }
        LongColumn.encode(column, n, out);
        for (int i = 0; i < n; i++) {
            column[i] = table.flags[i];
        }
        LongColumn.encode(column, n, out);
    }

    /** In 1/65,536: from the first frame to the last; any value would do, the residuals are exact. */
    private static long ticksPerSample(FrameTable table) {
        int last = table.frames - 1;
        double samples = (double) table.number[last] - table.number[0];
        return samples <= 0 ? 0 : Math.round(65_536.0 * ((double) table.tick[last] - table.tick[0]) / samples);
    }

    private static long expectedTick(FrameTable table, int frame, long slope) {
        return ((table.number[frame] - table.number[0]) * slope) >> 16;
    }

    /**
     * Reads frames and runs; leaves the counts to be decoded on demand.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content; {@code into} is left half filled
     */
    void decode(Block block, SampleBlock into) {
        ByteReader in = block.content();
        decodeFrames(in, block.first(), block.count(), into.table);
        into.cutIntoRuns();
        directory.read(in, block.isInPlanes(), into);
    }

    /** Reads only the frames; where the bytes are no such content, {@code table} is left half filled. */
    void decodeFrames(ByteReader in, long firstNumber, int samples, FrameTable table) {
        if (samples < 1) {
            throw new IndexOutOfBoundsException("a block of no sample");
        }
        int frames = in.count(Math.min(samples, Block.SAMPLES));
        room(frames);
        table.begin(frames, samples);
        if (LongColumn.decode(in, column, frames)) {
            evenLengths(samples, table);
        } else {
            lengths(samples, table);
        }
        boolean areContiguous = decodeNumbers(in, firstNumber, table);
        decodeTicks(in, table);
        table.isOneStretch = decodeFlags(in, table) && areContiguous;
    }

    private void evenLengths(int samples, FrameTable table) {
        long length = column[0];
        if (length < 1 || length > samples || length * table.frames != samples) {
            throw new IndexOutOfBoundsException(
                    table.frames + " frames of " + length + " samples where there are " + samples);
        }
        for (int i = 0; i < table.frames; i++) {
            table.from[i + 1] = (i + 1) * (int) length;
        }
    }

    private void lengths(int samples, FrameTable table) {
        int left = samples;
        for (int i = 0; i < table.frames; i++) {
            if (column[i] < 1 || column[i] > left) {
                throw new IndexOutOfBoundsException("a frame of " + column[i] + " samples");
            }
            table.from[i + 1] = table.from[i] + (int) column[i];
            left -= (int) column[i];
        }
        if (left != 0) {
            throw new IndexOutOfBoundsException(left + " samples in no frame");
        }
    }

    /** Whether each frame surely goes on where the one before ended. */
    private boolean decodeNumbers(ByteReader in, long firstNumber, FrameTable table) {
        boolean areContiguous = LongColumn.decode(in, column, table.frames);
        if (column[0] != 0) {
            throw new IndexOutOfBoundsException("a first frame " + column[0] + " samples behind the block's first");
        }
        if (areContiguous) {
            for (int i = 0; i < table.frames; i++) {
                table.number[i] = firstNumber + table.from[i];
            }
            return true;
        }
        long number = firstNumber;
        for (int i = 0; i < table.frames; i++) {
            number += column[i];
            table.number[i] = number;
            number += table.length(i);
        }
        return false;
    }

    private void decodeTicks(ByteReader in, FrameTable table) {
        long slope = in.zigzag();
        LongColumn.decode(in, column, table.frames);
        for (int i = 0; i < table.frames; i++) {
            table.tick[i] = column[i] + expectedTick(table, i, slope);
        }
    }

    /** Whether all flags are surely the same. */
    private boolean decodeFlags(ByteReader in, FrameTable table) {
        boolean areEqual = LongColumn.decode(in, column, table.frames);
        for (int i = 0; i < table.frames; i++) {
            table.flags[i] = (int) column[i];
        }
        return areEqual;
    }

    private void room(int frames) {
        if (frames > column.length) {
            column = new long[frames];
        }
    }
}
