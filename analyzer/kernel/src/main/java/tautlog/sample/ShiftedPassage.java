package tautlog.sample;

/** A passage from whose counts a moved zero is taken off. One object, filled anew. */
final class ShiftedPassage implements Passage {
    private final ZeroShift zero;
    private Passage passage;
    private int least;
    private int greatest;

    /** @param first any, to begin with */
    ShiftedPassage(ZeroShift zero, Passage first) {
        this.zero = zero;
        passage = first;
    }

    void set(Passage next, int shiftedLeast, int shiftedGreatest) {
        passage = next;
        least = shiftedLeast;
        greatest = shiftedGreatest;
    }

    @Override
    public int frames() {
        return passage.frames();
    }

    @Override
    public long frameNumber(int frame) {
        return passage.frameNumber(frame);
    }

    @Override
    public long frameTick(int frame) {
        return passage.frameTick(frame);
    }

    @Override
    public int frameLength(int frame) {
        return passage.frameLength(frame);
    }

    @Override
    public int shaftFrames() {
        return passage.shaftFrames();
    }

    @Override
    public long shaftTick(int shaftFrame) {
        return passage.shaftTick(shaftFrame);
    }

    @Override
    public long pulses(int shaftFrame) {
        return passage.pulses(shaftFrame);
    }

    @Override
    public long[] pulseTicks() {
        return passage.pulseTicks();
    }

    @Override
    public int pulsesFrom(int shaftFrame) {
        return passage.pulsesFrom(shaftFrame);
    }

    @Override
    public int pulsesIn(int shaftFrame) {
        return passage.pulsesIn(shaftFrame);
    }

    @Override
    public long first() {
        return passage.first();
    }

    @Override
    public int samples() {
        return passage.samples();
    }

    @Override
    public int runs() {
        return passage.runs();
    }

    @Override
    public StoredCounts run(int run) {
        return zero.shifted(passage.run(run));
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
