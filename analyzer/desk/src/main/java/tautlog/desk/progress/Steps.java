package tautlog.desk.progress;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToLongFunction;

/** Several things to do, in whatever order they are ready; tells how far they are. Safe for threads. */
public final class Steps {
    private final String what;
    private final long[] sizes;
    private final long ofSize;
    private final Progress progress;
    private int done;
    private long size;

    private Steps(String what, long[] sizes, Progress progress) {
        this.what = what;
        this.sizes = sizes;
        this.progress = progress;
        ofSize = Arrays.stream(sizes).sum();
    }

    /**
     * Before the first of them is done.
     *
     * @param what a word for the things
     * @param size how much of a thing is to be read; 0 when it is remembered. Asked only where somebody looks on
     */
    public static <T> Steps of(String what, List<T> things, ToLongFunction<T> size, Progress progress) {
        long[] sizes = progress.isWatched() ? things.stream().mapToLong(size).toArray() : new long[things.size()];
        return new Steps(what, sizes, progress);
    }

    /** @param at the place of the one that is done, 0 for the first */
    public synchronized void done(int at) {
        done++;
        size += sizes[at];
        progress.done(new Sofar(what, done, sizes.length, size, ofSize));
    }
}
