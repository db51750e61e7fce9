package tautlog.recording;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import tautlog.sample.Tally;

/**
 * One outing of a recording, without its samples.
 *
 * @param index 0 for the file's first
 * @param samples how many are stored
 * @param firstNumber of its first sample; meaningless when {@code samples} is 0
 * @param ended true when it was closed in order, false when a power cut ended it or it is still being recorded
 * @param closed true when nothing can follow: ended in order, or finished after a power cut
 * @param clockFixes all of them, in order of time
 */
public record Outing(
        int index,
        OutingStart start,
        long samples,
        long firstNumber,
        long lastNumber,
        long firstTick,
        long lastTick,
        boolean ended,
        boolean closed,
        List<ClockFix> clockFixes,
        Tally tally) {
    public Outing {
        clockFixes = List.copyOf(clockFixes);
    }

    /** UTC in microseconds since 1970 at {@code tick}, by the nearest clock fix; unknown without one. */
    public OptionalLong utcMicros(long tick) {
        return clockFixes.stream()
                .min(Comparator.comparingLong(fix -> Math.abs(fix.tick() - tick)))
                .map(fix -> OptionalLong.of(fix.utcMicros()
                        + micros(tick - fix.tick(), start.instrument().tickHz())))
                .orElse(OptionalLong.empty());
    }

    private static long micros(long ticks, long tickHz) {
        return Math.floorDiv(ticks, tickHz) * 1_000_000 + Math.floorMod(ticks, tickHz) * 1_000_000 / tickHz;
    }

    /** At {@code tick} the logger's clock said {@code utcMicros} since 1970. */
    public record ClockFix(long tick, long utcMicros) {}
}
