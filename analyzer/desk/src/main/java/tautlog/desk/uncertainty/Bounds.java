package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the true value of a figure lies with a probability of {@link Interval#COVERAGE} that is no force: a share, a factor, an
 * impulse, a rate. In that figure's own unit.
 *
 * @param low empty: unknown
 * @param high empty: unknown, it may have been any amount greater
 * @param largest what makes it widest; empty when nothing is known
 * @param leavesOut what it does not hold, or why an end is unknown, in words
 */
public record Bounds(OptionalDouble low, OptionalDouble high, Optional<Cause> largest, List<String> leavesOut) {
    public Bounds {
        leavesOut = List.copyOf(leavesOut);
    }

    /** Nothing is known, because of {@code why}. */
    public static Bounds unknown(String why) {
        return new Bounds(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), List.of(why));
    }

    /**
     * A share of a limit: the limit is a figure that was agreed on and adds nothing. Of one that is only known as "at most" the
     * true share has no upper end.
     *
     * @param limitNewtons above 0
     */
    public static Bounds share(Interval tension, double limitNewtons, boolean limitIsAtMost) {
        Bounds share = of(tension, 1 / limitNewtons);
        return limitIsAtMost && tension.lowNewtons().isPresent()
                ? share.openAbove("above it: the limit is only known as at most")
                : share;
    }

    /**
     * An impulse in newton seconds: the mean tension times the time of the readings that it was taken over. That time is a number
     * of samples at the instrument's rate and is taken to be exact; a pull's ends may each be off by one sample, in which the
     * tension is near the threshold of a pull.
     *
     * @param seconds of present readings
     * @param hasGap readings are missing in the pull: what the line did meanwhile is not in its impulse
     */
    public static Bounds impulse(Interval mean, double seconds, boolean hasGap) {
        Bounds impulse = of(mean, seconds);
        return hasGap && mean.lowNewtons().isPresent()
                ? impulse.openAbove("above it: what the line did while readings are missing")
                : impulse;
    }

    private static Bounds of(Interval interval, double factor) {
        Interval scaled = interval.times(factor);
        return new Bounds(scaled.lowNewtons(), scaled.highNewtons(), scaled.largest(), scaled.leavesOut());
    }

    Bounds openAbove(String why) {
        List<String> left = new ArrayList<>(leavesOut);
        left.add(why);
        return new Bounds(low, OptionalDouble.empty(), largest, left);
    }
}
