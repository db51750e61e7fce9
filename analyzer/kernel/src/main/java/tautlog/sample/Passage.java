package tautlog.sample;

/**
 * Frames of an outing without a gap between them, of samples that mean something; the samples, in runs; and the shaft frames that came
 * meanwhile. No event acts in it. Valid only during the call that hands it over.
 *
 * <p>The samples begin where those told before it ended, perhaps inside a frame, and end at a run's end: the last frame may have more
 * of them.
 */
public interface Passage {
    /** The most samples in one. */
    int MOST = 16 * StoredCounts.MOST;

    /** How many frames begin in it; may be 0. */
    int frames();

    /** Number of the first sample of frame {@code frame}; each frame goes on where the one before ended. */
    long frameNumber(int frame);

    /** Tick of the first sample of frame {@code frame}. */
    long frameTick(int frame);

    /** How many samples frame {@code frame} has. */
    int frameLength(int frame);

    /** How many shaft frames came with these frames; may be 0. */
    int shaftFrames();

    long shaftTick(int shaftFrame);

    /** The count of pulses at the end of shaft frame {@code shaftFrame}. */
    long pulses(int shaftFrame);

    /** The ticks of the pulses of all shaft frames, end to end; not to be changed. */
    long[] pulseTicks();

    /** Where the pulses of shaft frame {@code shaftFrame} begin in {@link #pulseTicks}. */
    int pulsesFrom(int shaftFrame);

    /** How many pulses shaft frame {@code shaftFrame} has. */
    int pulsesIn(int shaftFrame);

    /** Number of the first sample. */
    long first();

    /** How many samples; 1 to {@link #MOST}. */
    int samples();

    int runs();

    /** The samples of run {@code run}; each run goes on where the one before ended. */
    StoredCounts run(int run);

    /** The least of all counts, exactly. */
    int least();

    /** The greatest of all counts, exactly. */
    int greatest();
}
