package tautlog.recording;

import tautlog.sample.Evidence;

/**
 * Takes a replay run by run instead of frame by frame: the fast way, because a run whose least and greatest cannot matter need
 * not be decoded.
 *
 * <p>{@link #tension} is not called. For each run come, in this order: {@link #frame} for every frame that begins in it
 * (or before it), what is keyed by a sample number up to the run's last and the shaft frames that came before the last of
 * these frames, {@link #run}.
 */
public interface RunSink extends Evidence {
    /** A frame of {@code n} samples begins in the run that comes next. */
    void frame(long number, long tick, int flags, int n);

    /** Run {@code run} of {@code block}; valid only during the call. */
    void run(SampleBlock block, int run);

    @Override
    default void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        throw new IllegalStateException("a replay by runs makes no call by frames");
    }
}
