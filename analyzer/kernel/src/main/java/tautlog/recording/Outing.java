package tautlog.recording;

import java.util.List;
import tautlog.sample.ClockFix;
import tautlog.sample.Tally;

/**
 * One outing of a recording, without its samples.
 *
 * @param index 0 for the file's first
 * @param samples how many are stored
 * @param firstNumber of its first sample; meaningless when {@code samples} is 0
 * @param ended true when it was closed in order, false when a power cut ended it
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
        List<ClockFix> clockFixes,
        Tally tally) {
    public Outing {
        clockFixes = List.copyOf(clockFixes);
    }
}
