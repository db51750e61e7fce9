package tautlog.recording;

import java.util.List;
import java.util.OptionalLong;
import tautlog.sample.ClockFix;
import tautlog.sample.OutingClock;
import tautlog.sample.Tally;

/**
 * One outing of a recording, without its samples.
 *
 * @param index 0 for the file's first
 * @param samples how many were stored; of a thinned outing none is left
 * @param firstNumber of its first sample; meaningless when {@code samples} is 0
 * @param ended true when it was closed in order, false when a power cut ended it or it is still being recorded
 * @param closed true when nothing can follow: ended in order, or finished after a power cut
 * @param thinned true when its readings were taken out because the disk was nearly full: what was said live and the rest of its
 *     evidence are all there is
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
        boolean thinned,
        List<ClockFix> clockFixes,
        Tally tally) {
    public Outing {
        clockFixes = List.copyOf(clockFixes);
    }

    /** UTC in microseconds since 1970 at {@code tick}; unknown without a clock fix. */
    public OptionalLong utcMicros(long tick) {
        return OutingClock.of(clockFixes, start.instrument().tickHz()).utcMicros(tick);
    }
}
