package tautlog.recording;

import java.util.Arrays;

/**
 * A decoded block of samples, seen as frames (what arrived when) and as runs: at most 128 samples with consecutive numbers and
 * the same flags, each with its least and greatest count. A run never spans a gap.
 *
 * <p>Runs are decoded on demand, so that a reader passes over those whose least and greatest cannot matter to it. Belongs
 * to who hands it out: valid only during the call. One thread.
 */
public final class SampleBlock {
    final FrameTable table = new FrameTable();
    int runs;
    long[] runNumber = new long[192];
    int[] runFlags = new int[192];
    int[] runFrom = new int[193];
    int[] runLeast = new int[192];
    int[] runGreatest = new int[192];
    byte[] runCoding = new byte[192];
    int[] runBase = new int[192];
    int[] runSlope = new int[192];
    int[] runAt = new int[192];
    boolean[] runDecoded = new boolean[192];
    byte[] bytes = new byte[0];

    SampleBlock() {}

    public int samples() {
        return table.samples();
    }

    public int frames() {
        return table.frames;
    }

    /** The number of the first sample of frame {@code frame}. */
    public long frameNumber(int frame) {
        return table.number[frame];
    }

    /** The tick of the first sample of frame {@code frame}. */
    public long frameTick(int frame) {
        return table.tick[frame];
    }

    public int frameFlags(int frame) {
        return table.flags[frame];
    }

    public int frameLength(int frame) {
        return table.length(frame);
    }

    public int runs() {
        return runs;
    }

    /** The number of the first sample of run {@code run}. */
    public long runNumber(int run) {
        return runNumber[run];
    }

    /** The flags of every frame that run {@code run} lies in. */
    public int runFlags(int run) {
        return runFlags[run];
    }

    /** Where run {@code run} begins in {@link #counts}. */
    public int runFrom(int run) {
        return runFrom[run];
    }

    public int runLength(int run) {
        return runFrom[run + 1] - runFrom[run];
    }

    /** The least count of run {@code run}, known without decoding it. */
    public int runLeast(int run) {
        return runLeast[run];
    }

    /** The greatest count of run {@code run}, known without decoding it. */
    public int runGreatest(int run) {
        return runGreatest[run];
    }

    /** The counts of the whole block, of which run {@code run} is decoded now at the latest. */
    public int[] counts(int run) {
        if (!runDecoded[run]) {
            decode(run);
        }
        return table.counts;
    }

    /** The counts of the whole block, all decoded. */
    public int[] counts() {
        for (int run = 0; run < runs; run++) {
            counts(run);
        }
        return table.counts;
    }

    private void decode(int run) {
        int n = runLength(run);
        int at = runFrom[run];
        int width = runCoding[run] & 0x3F;
        int kind = (runCoding[run] & 0xFF) >>> 6;
        if (kind == RunCodec.STEP) {
            table.counts[at] = runBase[run];
            RunCodec.unpack(bytes, runAt[run], n - 1, width, runSlope[run], table.counts, at + 1);
            RunCodec.addSteps(table.counts, at, n);
        } else {
            RunCodec.unpack(bytes, runAt[run], n, width, runBase[run], table.counts, at);
            if (kind == RunCodec.LINE) {
                RunCodec.addLine(table.counts, at, n, runSlope[run]);
            }
        }
        runDecoded[run] = true;
    }

    /** Forgets what it holds. */
    void clear() {
        table.clear();
        runs = 0;
    }

    /** Cuts the frames' samples into runs; what the directory says of each is filled in afterwards. */
    void cutIntoRuns() {
        runs = 0;
        for (int frame = 0; frame < table.frames; ) {
            int next = table.endOfStretch(frame);
            int end = table.from[next];
            for (int at = table.from[frame]; at < end; at += RunCodec.RUN) {
                addRun(table.number[frame] + at - table.from[frame], table.flags[frame], at);
            }
            frame = next;
        }
        runFrom[runs] = table.samples();
    }

    private void addRun(long number, int flags, int at) {
        if (runs == runNumber.length) {
            grow();
        }
        runNumber[runs] = number;
        runFlags[runs] = flags;
        runFrom[runs] = at;
        runDecoded[runs] = false;
        runs++;
    }

    private void grow() {
        int room = runs * 2;
        runNumber = Arrays.copyOf(runNumber, room);
        runFlags = Arrays.copyOf(runFlags, room);
        runFrom = Arrays.copyOf(runFrom, room + 1);
        runLeast = Arrays.copyOf(runLeast, room);
        runGreatest = Arrays.copyOf(runGreatest, room);
        runCoding = Arrays.copyOf(runCoding, room);
        runBase = Arrays.copyOf(runBase, room);
        runSlope = Arrays.copyOf(runSlope, room);
        runAt = Arrays.copyOf(runAt, room);
        runDecoded = Arrays.copyOf(runDecoded, room);
    }
}
