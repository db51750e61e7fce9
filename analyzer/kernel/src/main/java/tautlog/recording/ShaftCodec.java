package tautlog.recording;

/**
 * Codes a block of shaft frames. Layout: {@code analyzer/RECORDING.md}, "Shaft".
 *
 * <p>The time between two pulses is foretold by the one {@code lag} pulses earlier: joint ripple and an uneven target repeat
 * every half or whole revolution, so that only jitter is left. Not thread-safe.
 */
final class ShaftCodec {
    private static final int[] LAGS = {1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 30, 32, 36, 48, 60, 64};

    private final ByteWriter trial = new ByteWriter();
    private long[] column = new long[1024];

    void encode(ShaftTable table, ByteWriter out) {
        int n = table.frames;
        room(Math.max(n, table.pulseTicks()));
        for (int i = 0; i < n; i++) {
            column[i] = table.tick[i] - expectedTick(table, i);
        }
        encodeFirstApart(n, out);
        for (int i = 0; i < n; i++) {
            column[i] = table.length(i);
        }
        LongColumn.encode(column, n, out);
        for (int i = 0; i < n; i++) {
            column[i] = table.pulses[i] - expectedPulses(table, i);
        }
        encodeFirstApart(n, out);
        for (int i = 0; i < n; i++) {
            column[i] = (long) table.samplesBefore[i] - (i == 0 ? 0 : table.samplesBefore[i - 1]);
        }
        LongColumn.encode(column, n, out);
        encodePulses(table, out);
    }

    /** As far after the frame before as that was after the one before it. */
    private static long expectedTick(ShaftTable table, int frame) {
        if (frame < 2) {
            return frame == 0 ? 0 : table.tick[0];
        }
        return 2 * table.tick[frame - 1] - table.tick[frame - 2];
    }

    private static long expectedPulses(ShaftTable table, int frame) {
        return frame == 0 ? 0 : table.pulses[frame - 1] + table.length(frame);
    }

    /** A column whose first number is far from the rest: it stands alone. */
    private void encodeFirstApart(int n, ByteWriter out) {
        out.zigzag(column[0]);
        System.arraycopy(column, 1, column, 0, n - 1);
        LongColumn.encode(column, n - 1, out);
    }

    private void encodePulses(ShaftTable table, ByteWriter out) {
        int n = table.pulseTicks();
        out.varint(n);
        if (n == 0) {
            return;
        }
        int lag = bestLag(table.pulseTick, n);
        out.u8(lag);
        out.zigzag(table.pulseTick[0] - table.tick[0]);
        if (n > 1) {
            surprises(table.pulseTick, n, lag);
            encodeFirstApart(n - 1, out);
        }
    }

    private int bestLag(long[] ticks, int n) {
        int best = 1;
        int least = Integer.MAX_VALUE;
        for (int lag : LAGS) {
            if (n > 1 && (lag == 1 || lag < n - 1)) {
                trial.clear();
                surprises(ticks, n, lag);
                encodeFirstApart(n - 1, trial);
                if (trial.size() < least) {
                    least = trial.size();
                    best = lag;
                }
            }
        }
        return best;
    }

    /** Each interval less the one foretold; the first whole. */
    private void surprises(long[] ticks, int n, int lag) {
        for (int i = 0; i < n - 1; i++) {
            column[i] = ticks[i + 1] - ticks[i] - expectedInterval(ticks, i, lag);
        }
    }

    /** What interval {@code i} (from pulse i to pulse i + 1) should be, from pulses up to i. */
    private static long expectedInterval(long[] ticks, int i, int lag) {
        if (i == 0) {
            return 0;
        }
        int like = i >= lag ? i - lag : i - 1;
        return ticks[like + 1] - ticks[like];
    }

    /**
     * Reads {@code frames} shaft frames, 1 or more.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content; {@code table} is empty then
     */
    void decode(ByteReader in, int frames, ShaftTable table) {
        table.clear();
        if (frames < 1) {
            throw new IndexOutOfBoundsException("a block of no shaft frame");
        }
        room(frames);
        table.roomForFrames(frames);
        decodeFirstApart(in, table.tick, frames);
        LongColumn.decode(in, column, frames);
        long pulses = lengths(frames, table);
        decodeFirstApart(in, table.pulses, frames);
        LongColumn.decode(in, column, frames);
        long before = 0;
        for (int i = 0; i < frames; i++) {
            before += column[i];
            table.samplesBefore[i] = (int) before;
            table.tick[i] += expectedTick(table, i);
            table.pulses[i] += expectedPulses(table, i);
        }
        decodePulses(in, (int) pulses, table);
        table.frames = frames;
    }

    /** Where the pulses of each frame will lie, by the lengths in {@link #column}; how many there are. */
    private long lengths(int frames, ShaftTable table) {
        long at = 0;
        for (int i = 0; i < frames; i++) {
            if (column[i] < 0 || column[i] > Block.GREATEST_COUNT - at) {
                throw new IndexOutOfBoundsException("a shaft frame of " + column[i] + " pulses");
            }
            at += column[i];
            table.from[i + 1] = (int) at;
        }
        return at;
    }

    private void decodePulses(ByteReader in, int pulses, ShaftTable table) {
        int n = in.count(Block.GREATEST_COUNT);
        if (n != pulses) {
            throw new IndexOutOfBoundsException(n + " pulses where the frames have " + pulses);
        }
        if (n == 0) {
            return;
        }
        int lag = Math.max(1, in.u8());
        table.roomForPulses(n);
        long[] ticks = table.pulseTick;
        ticks[0] = table.tick[0] + in.zigzag();
        if (n > 1) {
            room(n);
            long[] interval = column;
            decodeFirstApart(in, interval, n - 1);
            for (int i = 1; i < Math.min(lag, n - 1); i++) {
                interval[i] += interval[i - 1];
            }
            for (int i = lag; i < n - 1; i++) {
                interval[i] += interval[i - lag];
            }
            long tick = ticks[0];
            for (int i = 0; i < n - 1; i++) {
                tick += interval[i];
                ticks[i + 1] = tick;
            }
        }
    }

    private static void decodeFirstApart(ByteReader in, long[] out, int n) {
        if (n > 0) {
            out[0] = in.zigzag();
            LongColumn.decode(in, out, 1, n - 1);
        }
    }

    private void room(int n) {
        if (n > column.length) {
            column = new long[n];
        }
    }
}
