package tautlog.service;

import java.util.List;

/** Says why a task's figures are not fully known. */
final class Doubts {
    private final Machine machine;
    private final List<Stint> unlogged;
    private final Since since;

    Doubts(Machine machine, List<Stint> unlogged, Since since) {
        this.machine = machine;
        this.unlogged = unlogged;
        this.since = since;
    }

    /** Adds a sentence for each cause to {@code doubts}. */
    void add(Task task, List<TaskState.Used> used, List<Happening> calls, List<String> doubts) {
        boolean sums = used.stream()
                .anyMatch(one -> one.meter().addsUp() && !one.amount().isKnown());
        long undated = machine.recorded().stream()
                .filter(stint -> stint.end().isEmpty())
                .count();
        if (undated > 0 && since.at().isPresent() && (sums || !calls.isEmpty())) {
            doubts.add(undated + (undated == 1 ? " outing has" : " outings have")
                    + " no clock: whether before or after cannot be told.");
        }
        if (sums && since.kind() != Since.Kind.NEVER) {
            doubts.add("Gaps, missing shaft readings or unlogged work: part of it is not known.");
        }
        if (used.stream().anyMatch(one -> one.meter() == Meter.JOINT_H)) {
            doubts.add("Hours of the joint are a bound from above while the clutch is not known.");
        }
        if (task.gear().isPresent()
                && used.stream().anyMatch(one -> one.meter().addsUp() && one.meter() != Meter.PULLS)) {
            doubts.add("Hours are the winch's: the gear was in use for as many or fewer.");
        }
        boolean workedSince = unlogged.stream()
                .anyMatch(stint -> since.at().map(stint::endedAfter).orElse(true));
        if (task.after().isPresent() && workedSince) {
            doubts.add("What happened in unlogged work nobody knows.");
        }
    }
}
