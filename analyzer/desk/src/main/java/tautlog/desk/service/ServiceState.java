package tautlog.desk.service;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.config.NearestKey;
import tautlog.desk.report.LeftOut;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.Judge;
import tautlog.service.Ledger;
import tautlog.service.LedgerView;
import tautlog.service.Machine;
import tautlog.service.ServicePlan;
import tautlog.service.Task;
import tautlog.service.TaskState;

/**
 * How all tasks of all winches stand.
 *
 * @param asOf until when work is counted
 * @param zone whose days count
 * @param ledgerFile empty when none was given
 * @param tasks the most urgent first
 * @param notes what a reader must know, whole sentences
 * @param leftOut what could not be read of the recordings
 */
public record ServiceState(
        Instant asOf,
        ZoneId zone,
        Optional<Path> ledgerFile,
        Ledger ledger,
        List<Machine> machines,
        List<TaskState> tasks,
        List<String> notes,
        LeftOut leftOut) {
    public ServiceState {
        machines = List.copyOf(machines);
        tasks = List.copyOf(tasks);
        notes = List.copyOf(notes);
    }

    /**
     * What there is to judge.
     *
     * @param machines one or more, each winch once
     * @param notes of how recordings were put together
     */
    public record Known(List<Machine> machines, List<String> notes, LeftOut leftOut) {
        public Known {
            machines = List.copyOf(machines);
            notes = List.copyOf(notes);
        }

        /** What had begun by then. */
        public Known until(Instant end) {
            return new Known(
                    machines.stream().map(machine -> machine.until(end)).toList(), notes, leftOut);
        }
    }

    public static ServiceState of(
            Known known, ServicePlan plan, Ledger ledger, Optional<Path> ledgerFile, Instant asOf, ZoneId zone) {
        LedgerView view = view(known.machines(), ledger);
        List<TaskState> tasks = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (Machine machine : known.machines()) {
            Judge judge = new Judge(machine, view.of(machine.winch()), asOf, zone);
            tasks.addAll(judge.states(plan.tasks()));
            notes.addAll(leftOutTasks(machine, judge, plan));
            recordingsEnd(machine, asOf, zone).ifPresent(notes::add);
        }
        tasks.sort(Comparator.comparing(TaskState::standing));
        notes.addAll(ofLedger(known, plan, ledger, view));
        if (ledgerFile.isEmpty()) {
            notes.add("No ledger was read: what was done is not known. Give --ledger.");
        }
        notes.addAll(known.notes());
        return new ServiceState(asOf, zone, ledgerFile, ledger, known.machines(), tasks, notes, known.leftOut());
    }

    /** A folder that lacks the last weeks looks like weeks without work. */
    private static Optional<String> recordingsEnd(Machine machine, Instant asOf, ZoneId zone) {
        return machine.lastRecorded()
                .filter(end -> end.atZone(zone)
                        .toLocalDate()
                        .isBefore(asOf.atZone(zone).toLocalDate()))
                .map(end -> "The last recording of " + machine.winch() + " here ends " + new TaskWords(zone).time(end)
                        + "; what was worked since then counts only where it was entered.");
    }

    /** Entries of the ledger that count for {@code winch}. */
    List<Entry> entriesOf(String winch) {
        return view(machines, ledger).of(winch);
    }

    private static LedgerView view(List<Machine> machines, Ledger ledger) {
        return new LedgerView(ledger, winches(machines));
    }

    private static List<String> leftOutTasks(Machine machine, Judge judge, ServicePlan plan) {
        Map<String, List<String>> byGear = new LinkedHashMap<>();
        plan.tasks()
                .forEach(task -> task.gear()
                        .ifPresent(gear -> byGear.computeIfAbsent(gear, of -> new ArrayList<>())
                                .add(task.id())));
        List<String> notes = new ArrayList<>();
        byGear.forEach((gear, tasks) -> {
            String which = (tasks.size() == 1 ? "Task " : "Tasks ") + String.join(", ", tasks);
            if (!machine.gear().containsKey(gear)) {
                String near = NearestKey.to(gear, machine.gear().keySet())
                        .map(meant -> " Did you mean \"" + meant + "\"?")
                        .orElse("");
                notes.add(which + ": the latest rig of " + machine.winch() + " has no gear \"" + gear
                        + "\"; left out there." + near);
            } else if (judge.isRetired(gear)) {
                notes.add(which + ": " + gear + " of " + machine.winch()
                        + " is retired; left out until other is fitted.");
            }
        });
        return notes;
    }

    /** What of the ledger could not be read, counts for no winch here, or may be wrong. */
    LedgerDoubts doubts() {
        return new LedgerDoubts(ledger, KnownGear.ofMachines(machines));
    }

    /** Notes that do not stand among the doubts. */
    List<String> notesBesideDoubts() {
        Set<String> doubts = doubts().besideLines();
        return notes.stream().filter(note -> !doubts.contains(note)).toList();
    }

    private static Set<String> winches(List<Machine> machines) {
        return machines.stream().map(Machine::winch).collect(Collectors.toSet());
    }

    private static List<String> ofLedger(Known known, ServicePlan plan, Ledger ledger, LedgerView view) {
        List<String> notes = new ArrayList<>();
        for (Entry entry : view.ownerless()) {
            notes.add("Entry " + entry.id() + " (" + entry.act().kind() + ") does not say of which winch: with several"
                    + " winches it counts for none. Correct it with --winch.");
        }
        Set<String> tasks = plan.tasks().stream().map(Task::id).collect(Collectors.toSet());
        Set<String> strangers = new LedgerDoubts(ledger, KnownGear.ofMachines(known.machines())).besideLines();
        for (Entry entry : ledger.entries()) {
            if (entry.act() instanceof Act.Done done && !tasks.contains(done.task())) {
                strangers.add("The ledger speaks of a task \"" + done.task() + "\" that is not in the tasks."
                        + NearestKey.to(done.task(), tasks)
                                .map(near -> " Did somebody mean \"" + near + "\"? Correct " + entry.id() + ".")
                                .orElse(""));
            }
        }
        notes.addAll(strangers);
        return notes;
    }
}
