package tautlog.sample;

/** A passage from whose counts a moved zero is taken off. */
final class ShiftedPassage implements Passage {
    private final ZeroShift zero;
    private final Passage passage;
    private final int least;
    private final int greatest;

    /** @param least what is left of the least count, as {@code greatest} is of the greatest */
    ShiftedPassage(ZeroShift zero, Passage passage, int least, int greatest) {
        this.zero = zero;
        this.passage = passage;
        this.least = least;
        this.greatest = greatest;
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
