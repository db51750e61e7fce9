package tautlog.recording;

import tautlog.sample.Evidence;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/**
 * Takes a replay run by run instead of frame by frame: the fast way, because most frames tell nothing by themselves, and because a run
 * whose least and greatest cannot matter need not be decoded.
 *
 * <p>The calls are those of a replay by frames, in the same order, but for {@link #tension}, which is not called: {@link #frame} comes
 * in its place, and the samples follow by {@link #run}, at the latest when 128 of them are due, and before the next event that is told
 * between two frames. So a shaft frame may come before samples that came before it, by 127 of them at most. Where no event acts, all of
 * that is offered at once by {@link #passage}.
 */
public interface RunSink extends Evidence {
    /** A frame of {@code n} samples begins; its samples come by {@link #run}. */
    void frame(long number, long tick, int flags, int n);

    /**
     * The next samples of frames that were begun.
     *
     * @param number of the first
     * @param flags of every frame that they lie in
     * @param counts a run of the recording unless an event cuts it
     */
    void run(long number, int flags, StoredCounts counts);

    /**
     * What comes next, all at once: the fastest way. Whoever takes it gets none of it by the other calls; it is offered wherever no event
     * acts for some runs.
     *
     * @return false when it shall come by the other calls; then none of it may have been taken
     */
    default boolean passage(Passage passage) {
        return false;
    }

    @Override
    default void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        throw new IllegalStateException("a replay by runs makes no call by frames");
    }
}
