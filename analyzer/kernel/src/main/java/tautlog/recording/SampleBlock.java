package tautlog.recording;

import java.util.Arrays;
import tautlog.sample.CountBounds;
import tautlog.sample.PlainCounts;
import tautlog.sample.StoredCounts;

/**
 * A decoded block of samples, seen as frames (what arrived when) and as runs: at most 128 samples with consecutive numbers and
 * the same flags, each with its least and greatest count. A run never spans a gap.
 *
 * <p>Runs are decoded on demand, so that a reader passes over those whose least and greatest cannot matter to it. One thread.
 */
public final class SampleBlock {
    final FrameTable table = new FrameTable();
    int runs;
    long[] runNumber = new long[192];
    int[] runFlags = new int[192];
    int[] runFrom = new int[193];
    StoredCounts[] stored = new StoredCounts[192];

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

    /** The counts of run {@code run}, decoded when they are wanted; stay valid when this block does not. */
    public StoredCounts run(int run) {
        return stored[run];
    }

    /** The counts of the whole block, decoded. */
    public int[] counts() {
        for (int run = 0; run < runs; run++) {
            stored[run].copyTo(table.counts, runFrom[run]);
        }
        return table.counts;
    }

    /** Cuts counts that are all decoded into runs. */
    void openRuns() {
        cutIntoRuns();
        for (int run = 0; run < runs; run++) {
            stored[run] = PlainCounts.copyOf(table.counts, runFrom[run], runLength(run));
        }
    }

    /**
     * Holds what the directory says of each run against its counts, which are all decoded: the chain covers these alone.
     *
     * @throws IndexOutOfBoundsException if it says otherwise
     */
    void requireBounds() {
        CountBounds bounds = new CountBounds();
        for (int run = 0; run < runs; run++) {
            StoredCounts said = stored[run];
            bounds.measure(table.counts, runFrom[run], runLength(run));
            if (said.least() != bounds.least() || said.greatest() != bounds.greatest()) {
                throw new IndexOutOfBoundsException("a run said to be " + said.least() + " to " + said.greatest()
                        + " that is " + bounds.least() + " to " + bounds.greatest());
            }
        }
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
        runs++;
    }

    private void grow() {
        int room = runs * 2;
        runNumber = Arrays.copyOf(runNumber, room);
        runFlags = Arrays.copyOf(runFlags, room);
        runFrom = Arrays.copyOf(runFrom, room + 1);
        stored = Arrays.copyOf(stored, room);
    }
}
