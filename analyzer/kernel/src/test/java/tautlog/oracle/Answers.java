package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Known;
import tautlog.detect.Second;

/**
 * What one implementation of the page says of an outing.
 *
 * @param findings sorted, so that the order in which they became known does not matter
 */
record Answers(
        List<Finding> findings,
        List<Second> seconds,
        List<Cycle> cycles,
        List<Reading> readings,
        List<Interval> intervals) {
    Answers {
        findings = List.copyOf(findings);
        seconds = List.copyOf(seconds);
        cycles = List.copyOf(cycles);
        readings = List.copyOf(readings);
        intervals = List.copyOf(intervals);
    }

    Answers withoutSeconds() {
        return new Answers(findings, List.of(), cycles, readings, intervals);
    }

    /** The same, but intervals of which only bounds are known are those of {@code other} where these keep to them. */
    Answers withKnownIntervalsOf(Answers other) {
        List<Interval> known = new ArrayList<>(intervals);
        for (int i = 0; i < Math.min(known.size(), other.intervals.size()); i++) {
            if (known.get(i).bounds(other.intervals.get(i))) {
                known.set(i, other.intervals.get(i));
            }
        }
        return new Answers(findings, seconds, cycles, readings, known);
    }

    long boundedIntervals() {
        return intervals.stream()
                .filter(interval -> interval.samples == Interval.SOME)
                .count();
    }

    /** @see tautlog.detect.FindingSink#cycle */
    record Cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    /** @see tautlog.detect.FindingSink#shaftReading */
    record Reading(long tick, double rpm) {}

    /** @see tautlog.detect.FindingSink#shaftInterval */
    record Interval(long ticks, double rpm, int samples, int greatest, Known clutch) {
        /** So many samples as there are, one or more, and a greatest count that is only a bound. */
        static final int SOME = -1;

        private boolean bounds(Interval other) {
            return samples == SOME
                    && other.samples > 0
                    && other.greatest <= greatest
                    && new Interval(ticks, rpm, other.samples, other.greatest, clutch).equals(other);
        }
    }
}
