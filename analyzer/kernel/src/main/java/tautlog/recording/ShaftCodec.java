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
     * Reads {@code frames} shaft frames.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content
     */
    void decode(ByteReader in, int frames, ShaftTable table) {
        long[] ticks = decodeFirstApart(in, frames);
        long[] lengths = new long[frames];
        LongColumn.decode(in, lengths, frames);
        long[] pulses = decodeFirstApart(in, frames);
        long[] before = new long[frames];
        LongColumn.decode(in, before, frames);
        long[] pulseTicks = decodePulses(in, ticks[0]);
        fill(table, ticks, lengths, pulses, before, pulseTicks);
    }

    private static void fill(
            ShaftTable table, long[] ticks, long[] lengths, long[] pulses, long[] before, long[] pulseTicks) {
        table.clear();
        int at = 0;
        long samplesBefore = 0;
        for (int i = 0; i < ticks.length; i++) {
            int length = (int) lengths[i];
            if (lengths[i] < 0 || lengths[i] > pulseTicks.length - at) {
                throw new IndexOutOfBoundsException("a shaft frame of " + lengths[i] + " pulses");
            }
            samplesBefore += before[i];
            table.add(0, 0, (int) samplesBefore, pulseTicks, at, length);
            table.tick[i] = ticks[i] + expectedTick(table, i);
            table.pulses[i] = pulses[i] + expectedPulses(table, i);
            at += length;
        }
        if (at != pulseTicks.length) {
            throw new IndexOutOfBoundsException(pulseTicks.length - at + " pulses in no frame");
        }
    }

    private static long[] decodePulses(ByteReader in, long firstTick) {
        int n = in.count(Block.GREATEST_COUNT);
        long[] ticks = new long[n];
        if (n == 0) {
            return ticks;
        }
        int lag = in.u8();
        ticks[0] = firstTick + in.zigzag();
        if (n > 1) {
            long[] surprise = decodeFirstApart(in, n - 1);
            for (int i = 0; i < n - 1; i++) {
                ticks[i + 1] = ticks[i] + surprise[i] + expectedInterval(ticks, i, Math.max(1, lag));
            }
        }
        return ticks;
    }

    private static long[] decodeFirstApart(ByteReader in, int n) {
        long[] column = new long[n];
        column[0] = in.zigzag();
        if (n > 1) {
            long[] rest = new long[n - 1];
            LongColumn.decode(in, rest, n - 1);
            System.arraycopy(rest, 0, column, 1, n - 1);
        }
        return column;
    }

    private void room(int n) {
        if (n > column.length) {
            column = new long[n];
        }
    }
}
