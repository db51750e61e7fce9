package tautlog.desk.page;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Cause;
import tautlog.desk.uncertainty.Interval;

/** Says once for a whole report what its intervals hold, and what they do not. */
final class IntervalWords {
    private final Report report;

    IntervalWords(Report report) {
        this.report = report;
    }

    String sentence() {
        List<Interval> all = intervals().toList();
        if (all.isEmpty()) {
            return "No force is given here that could be off.";
        }
        String left = leftOut(all);
        if (all.stream().noneMatch(interval -> interval.lowNewtons().isPresent())) {
            return "How far the forces may be off is not known" + left
                    + " Calibrate the cell with known loads (tautlog calibrate) and name the file in logger.toml.";
        }
        return "The intervals hold the true force with 95 %, as far as calibration, reference loads, zero, resolution, noise and the"
                + " angle at the cell put it in doubt" + largest()
                + ". They do not hold temperature, creep, side loads, nor how"
                + " the cell follows fast loads" + left;
    }

    private Stream<Interval> intervals() {
        return Stream.of(
                        report.pulls().stream().map(Entry.Pull::peakInterval),
                        report.overloads().stream().map(Entry.Overload::peakInterval),
                        report.shocks().stream().map(Entry.Shock::peakInterval),
                        report.jolts().stream().map(Entry.Jolt::peakInterval),
                        report.drops().stream().map(Entry.Drop::beforeInterval),
                        report.stalls().stream().map(Entry.Stall::tensionInterval))
                .flatMap(intervals -> intervals);
    }

    private String largest() {
        return report.pulls().stream()
                .max(Comparator.comparingDouble(Entry.Pull::share))
                .flatMap(pull -> pull.peakInterval().largest())
                .map(Cause::word)
                .map(word -> "; of the pull with the greatest share most of it is: " + word)
                .orElse("");
    }

    private static String leftOut(List<Interval> all) {
        Set<String> reasons = new LinkedHashSet<>();
        all.forEach(interval -> reasons.addAll(interval.leavesOut()));
        return reasons.isEmpty() ? "." : ". Not known in some or all of them: " + String.join("; ", reasons) + ".";
    }
}
