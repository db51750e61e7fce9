package tautlog.desk.progress;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How long a piece of work will still take, judged by the later half of what was done of it: the first files are read slowly, while
 * the program warms up. Nothing is said before two seconds have passed, four things were read and a tenth of all is done: from less it would
 * be a guess, as the first file takes longer than others, and files that are half read count for nothing yet. It is as wrong as the speed
 * changes. Not safe for threads.
 */
public final class TimeLeft {
    /** Chosen: who waits so long wants to know. */
    private static final long SOONEST_NANOS = 2_000_000_000L;

    private static final int LEAST_THINGS = 4;
    private static final long LEAST_PART = 10;

    private final long startNanos;
    private final TreeMap<Long, Long> nanosBySize = new TreeMap<>();

    /** @param startNanos when the work began, by any clock that never goes back */
    public TimeLeft(long startNanos) {
        this.startNanos = startNanos;
        nanosBySize.put(0L, startNanos);
    }

    /**
     * Learns what is done now; empty while not enough is.
     *
     * @param size done, in what takes equally long each; never less than before
     * @param of all of it
     */
    public Optional<Duration> at(long nowNanos, long size, long of) {
        nanosBySize.putIfAbsent(size, nowNanos);
        boolean few = nanosBySize.size() - 1 < LEAST_THINGS || size < of / LEAST_PART;
        if (few || nowNanos - startNanos < SOONEST_NANOS) {
            return Optional.empty();
        }
        Map.Entry<Long, Long> half = nanosBySize.floorEntry(size / 2);
        double nanosEach = (nowNanos - half.getValue()) / (double) (size - half.getKey());
        return Optional.of(Duration.ofNanos((long) (nanosEach * (of - size))));
    }

    /** For a person: rounded up, no finer than it is known. */
    public static String words(Duration left) {
        long seconds = left.toSeconds() + 1;
        if (seconds <= 10) {
            return "a few seconds left";
        }
        if (seconds <= 90) {
            return "about " + (seconds + 9) / 10 * 10 + " s left";
        }
        long minutes = (seconds + 59) / 60;
        return minutes <= 90 ? "about " + minutes + " min left" : "about " + (minutes + 59) / 60 + " h left";
    }
}
