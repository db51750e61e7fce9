package tautlog.desk.incident;

import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Known;

/**
 * What the readings around a moment say that no finding does. Seconds are those of the outing.
 *
 * @param samples in the window
 * @param leastNewtons empty with none
 * @param greatestNewtons empty with none
 * @param greatestSeconds when, the earliest of equals; empty with none
 * @param endStops of them at the converter's end stop
 * @param gaps that touch the window
 * @param before the last reading at or before the moment asked for
 * @param after the first one after it
 * @param subject what was so when the tension was greatest in what the report is about
 * @param health what the instrument said of itself last, before the window's end
 */
public record Readings(
        long samples,
        OptionalDouble leastNewtons,
        OptionalDouble greatestNewtons,
        OptionalDouble greatestSeconds,
        long endStops,
        List<Gap> gaps,
        OptionalDouble before,
        OptionalDouble after,
        AtGreatest subject,
        Health health) {
    public Readings {
        gaps = List.copyOf(gaps);
    }

    /** Nothing is known from {@code fromSeconds} to {@code toSeconds}. */
    public record Gap(double fromSeconds, double toSeconds, Kind kind) {
        boolean holds(double seconds) {
            return fromSeconds < seconds && seconds < toSeconds;
        }
    }

    /** Why nothing is known. */
    public enum Kind {
        /** Numbers are missing. */
        MISSING,
        /** The bridge was open: what came is not the line's tension. */
        OPEN_BRIDGE
    }

    /**
     * What was so at the greatest tension.
     *
     * @param seconds when; empty when nothing was pulled
     * @param rpm the reading before it, at most a second old; empty when there was none
     */
    public record AtGreatest(OptionalDouble seconds, OptionalDouble rpm, Known clutch, Known brake) {
        static final AtGreatest NOTHING =
                new AtGreatest(OptionalDouble.empty(), OptionalDouble.empty(), Known.UNKNOWN, Known.UNKNOWN);
    }

    /** Empty where the instrument did not say it. */
    public record Health(OptionalDouble supplyVolts, OptionalDouble celsius) {
        static final Health NOTHING = new Health(OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** Whether nothing is known at {@code seconds} itself. */
    boolean isGapAt(double seconds) {
        return gaps.stream().anyMatch(gap -> gap.holds(seconds));
    }
}
