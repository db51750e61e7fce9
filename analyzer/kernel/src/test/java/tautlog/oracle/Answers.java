package tautlog.oracle;

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

    /** @see tautlog.detect.FindingSink#cycle */
    record Cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    /** @see tautlog.detect.FindingSink#shaftReading */
    record Reading(long tick, double rpm) {}

    /** @see tautlog.detect.FindingSink#shaftInterval */
    record Interval(long ticks, double rpm, int samples, int greatest, Known clutch) {}
}
