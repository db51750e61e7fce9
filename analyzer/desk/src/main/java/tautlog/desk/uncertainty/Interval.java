package tautlog.desk.uncertainty;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the true force lies with a probability of {@link #COVERAGE}.
 *
 * @param lowNewtons empty: unknown
 * @param highNewtons empty: unknown, the tension may have been any amount greater
 * @param largest what makes it widest; empty when nothing is known
 * @param leavesOut what the interval does not hold, or why an end is unknown, in words
 */
public record Interval(
        OptionalDouble lowNewtons, OptionalDouble highNewtons, Optional<Cause> largest, List<String> leavesOut) {
    /** The probability with which the true value lies inside. */
    public static final double COVERAGE = 0.95;

    public Interval {
        leavesOut = List.copyOf(leavesOut);
    }

    /** Nothing is known, because of {@code why}. */
    public static Interval unknown(String why) {
        return new Interval(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), List.of(why));
    }

    /** True when both ends are known. */
    public boolean isKnown() {
        return lowNewtons.isPresent() && highNewtons.isPresent();
    }

    /** The same of a figure that is {@code factor} times this one. */
    public Interval times(double factor) {
        return new Interval(scaled(lowNewtons, factor), scaled(highNewtons, factor), largest, leavesOut);
    }

    private static OptionalDouble scaled(OptionalDouble end, double factor) {
        return end.isPresent() ? OptionalDouble.of(end.getAsDouble() * factor) : end;
    }
}
