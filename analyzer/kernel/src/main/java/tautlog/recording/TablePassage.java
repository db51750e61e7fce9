package tautlog.recording;

import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** A passage in the tables of a span: one object, moved along the span. */
final class TablePassage implements Passage {
    private static final int MOST_RUNS = MOST / StoredCounts.MOST;

    private final SampleBlock block;
    private final FrameTable table;
    private final ShaftTable shaft;
    private final SpanOrder order;
    private int firstRun;
    private int endRun;
    private int firstFrame;
    private int endFrame;
    private int firstShaft;
    private int endShaft;
    private int least;
    private int greatest;

    /** @param order tells the events and shaft frames of the span */
    TablePassage(SampleBlock block, ShaftTable shaft, SpanOrder order) {
        this.block = block;
        this.table = block.table;
        this.shaft = shaft;
        this.order = order;
    }

    /**
     * Moves to the passage that begins with run {@code run}.
     *
     * @param frame the first that was not told
     * @return the run behind it; {@code run} when there is no passage
     */
    int begin(int run, int frame) {
        firstRun = run;
        firstFrame = frame;
        takeRuns(block.runs());
        takeFrames();
        if (endFrame > firstFrame && isEventDue(endFrame - 1)) {
            takeRuns(runsBefore(firstEvent()));
            takeFrames();
        }
        firstShaft = order.nextShaft();
        endShaft = endFrame > firstFrame ? order.shaftsBefore(endFrame - 1) : firstShaft;
        return endRun;
    }

    /** Takes runs before run {@code before}, as many as go together. */
    private void takeRuns(int before) {
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        endRun = firstRun;
        int end = Math.min(before, firstRun + MOST_RUNS);
        while (endRun < end && block.runFlags(endRun) == 0 && (endRun == firstRun || goesOn(endRun))) {
            StoredCounts counts = block.run(endRun++);
            least = Math.min(least, counts.least());
            greatest = Math.max(greatest, counts.greatest());
        }
    }

    private void takeFrames() {
        int end = block.runFrom(endRun);
        endFrame = firstFrame;
        while (endFrame < table.frames && table.from[endFrame] < end) {
            endFrame++;
        }
    }

    private boolean isEventDue(int frame) {
        return order.isEventDue(frame, table.number[frame] + table.length(frame) - 1);
    }

    /** The first frame before which an event is told; there is one. */
    private int firstEvent() {
        int frame = firstFrame;
        while (!isEventDue(frame)) {
            frame++;
        }
        return frame;
    }

    /** The run behind those that end before frame {@code frame}. */
    private int runsBefore(int frame) {
        int run = firstRun;
        while (run < endRun && block.runFrom(run + 1) <= table.from[frame]) {
            run++;
        }
        return run;
    }

    private boolean goesOn(int run) {
        return block.runNumber(run) == block.runNumber(run - 1) + block.runLength(run - 1);
    }

    /** The first frame behind it. */
    int endFrame() {
        return endFrame;
    }

    /** The first shaft frame behind it. */
    int endShaft() {
        return endShaft;
    }

    @Override
    public int frames() {
        return endFrame - firstFrame;
    }

    @Override
    public long frameNumber(int frame) {
        return table.number[firstFrame + frame];
    }

    @Override
    public long frameTick(int frame) {
        return table.tick[firstFrame + frame];
    }

    @Override
    public int frameLength(int frame) {
        return table.length(firstFrame + frame);
    }

    @Override
    public int shaftFrames() {
        return endShaft - firstShaft;
    }

    @Override
    public long shaftTick(int shaftFrame) {
        return shaft.tick[firstShaft + shaftFrame];
    }

    @Override
    public long pulses(int shaftFrame) {
        return shaft.pulses[firstShaft + shaftFrame];
    }

    @Override
    public long[] pulseTicks() {
        return shaft.pulseTick;
    }

    @Override
    public int pulsesFrom(int shaftFrame) {
        return shaft.from[firstShaft + shaftFrame];
    }

    @Override
    public int pulsesIn(int shaftFrame) {
        return shaft.length(firstShaft + shaftFrame);
    }

    @Override
    public long first() {
        return block.runNumber(firstRun);
    }

    @Override
    public int samples() {
        return block.runFrom(endRun) - block.runFrom(firstRun);
    }

    @Override
    public int runs() {
        return endRun - firstRun;
    }

    @Override
    public StoredCounts run(int run) {
        return block.run(firstRun + run);
    }

    @Override
    public int least() {
        return least;
    }

    @Override
    public int greatest() {
        return greatest;
    }
}
