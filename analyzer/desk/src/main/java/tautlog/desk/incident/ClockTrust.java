package tautlog.desk.incident;

import java.util.List;
import java.util.OptionalDouble;
import tautlog.recording.Outing;
import tautlog.sample.ClockFix;
import tautlog.sample.OutingClock;

/**
 * How good the times of one outing are. Between its looks at the logger's clock the instrument's own counter tells the time.
 *
 * @param looks at the logger's clock in the outing
 * @param set how many of them were set aside, because the clock was set by more than 2 s after them
 * @param nearestSeconds from the moment asked for to the nearest of the others; empty without one
 * @param greatestLateSeconds by how much the latest of the others was behind the time used here, 0 or more
 */
public record ClockTrust(int looks, int set, OptionalDouble nearestSeconds, double greatestLateSeconds) {
    /** Source: {@link OutingClock}: a departure by more is a clock that was set. */
    private static final double SET_SECONDS = 2;

    /** @param seconds of the outing asked for */
    static ClockTrust of(Outing outing, double seconds) {
        long tickHz = outing.start().instrument().tickHz();
        OutingClock clock = OutingClock.of(outing.clockFixes(), tickHz);
        List<ClockFix> counting = outing.clockFixes().stream()
                .filter(fix -> Math.abs(lateSeconds(clock, fix)) <= SET_SECONDS)
                .toList();
        return new ClockTrust(
                outing.clockFixes().size(),
                outing.clockFixes().size() - counting.size(),
                counting.stream()
                        .mapToDouble(fix -> Math.abs((double) (fix.tick() - outing.firstTick()) / tickHz - seconds))
                        .min(),
                counting.stream()
                        .mapToDouble(fix -> Math.max(0, lateSeconds(clock, fix)))
                        .max()
                        .orElse(0));
    }

    private static double lateSeconds(OutingClock clock, ClockFix fix) {
        return (fix.utcMicros() - clock.utcMicros(fix.tick()).orElseThrow()) / 1e6;
    }
}
