package tautlog.service;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Says how each task of a winch stands.
 *
 * <p>Of an interval I and an amount x since the task was last done: overdue when x &gt; I · (1 + late %), due when x ≥ I, soon when x ≥ I ·
 * (1 − early %), else later; of several intervals the most urgent counts. A happening that calls for it makes it due; overdue when winch or
 * gear was used on in an outing that began after. Work that went on while the task was done counts as done after it. What is known decides;
 * where it says "later" and what is not known may say more, the task stands as unknown. The wear of the joint is a bound from above: that
 * decides.
 */
public final class Judge {
    private final Machine machine;
    private final List<Entry> entries;
    private final List<Stint> unlogged;
    private final Instant now;
    private final ZoneId zone;

    /**
     * @param entries of this winch, see {@link LedgerView}
     * @param zone whose days count
     */
    public Judge(Machine machine, List<Entry> entries, Instant now, ZoneId zone) {
        this.machine = machine;
        this.entries = List.copyOf(entries);
        this.unlogged = Unlogged.stints(entries);
        this.now = now;
        this.zone = zone;
    }

    /** The states of {@code tasks}, the most urgent first, else in their order. */
    public List<TaskState> states(List<Task> tasks) {
        return tasks.stream()
                .filter(task -> task.gear().isEmpty() || isHere(task.gear().get()))
                .map(this::state)
                .sorted(Comparator.comparing(TaskState::standing))
                .toList();
    }

    /** Whether the rig has such gear and it was not retired since it was fitted. */
    private boolean isHere(String gear) {
        return machine.gear().containsKey(gear) && !isRetired(gear);
    }

    /** Whether all pieces of such gear were retired, and none was fitted since. */
    public boolean isRetired(String gear) {
        Optional<Instant> retired = last(gear, Act.Retired.class).map(Entry::at);
        Optional<Instant> fitted = Stream.concat(
                        last(gear, Act.Fitted.class).map(Entry::at).stream(), fittedByRig(gear))
                .max(Comparator.naturalOrder());
        return retired.isPresent()
                && fitted.map(at -> at.isBefore(retired.get())).orElse(true);
    }

    /** How one task stands; its gear is in the rig, if it names any. */
    public TaskState state(Task task) {
        Since since = since(task);
        List<String> doubts = new ArrayList<>();
        boolean isOpen = isOpen(since, doubts);
        List<TaskState.Used> used = new ArrayList<>();
        Standing standing = Standing.LATER;
        Standing mayBe = Standing.LATER;
        for (var every : task.every().entrySet()) {
            Amount amount = amount(every.getKey(), task.gear(), since, isOpen);
            TaskState.Used one = new TaskState.Used(every.getKey(), every.getValue(), amount);
            used.add(one);
            standing = standing.worse(standing(task, every.getValue().doubleValue(), one.deciding()));
            mayBe = mayBe.worse(standing(
                    task, every.getValue().doubleValue(), amount.greatest().orElse(Double.POSITIVE_INFINITY)));
        }
        List<Happening> calls = calls(task, since);
        standing = standing.worse(byCalls(
                task, calls.stream().filter(call -> surelySince(call, since)).toList()));
        mayBe = mayBe.worse(calls.isEmpty() ? Standing.LATER : Standing.DUE).worse(standing);
        if (task.after().isPresent() && machine.isIncomplete()) {
            mayBe = mayBe.worse(Standing.DUE);
        }
        new Doubts(machine, unlogged, since).add(task, used, calls, doubts);
        Standing shown = standing == Standing.LATER && mayBe != Standing.LATER ? Standing.UNKNOWN : standing;
        return new TaskState(task, machine.winch(), since, shown, mayBe, used, calls, doubts);
    }

    private static Standing standing(Task task, double interval, double amount) {
        if (amount > interval * (1 + task.latePercent().doubleValue() / 100)) {
            return Standing.OVERDUE;
        }
        if (amount >= interval) {
            return Standing.DUE;
        }
        return amount >= interval * (1 - task.earlyPercent().doubleValue() / 100) ? Standing.SOON : Standing.LATER;
    }

    private Since since(Task task) {
        Stream<Since> done = entries.stream()
                .filter(entry ->
                        entry.act() instanceof Act.Done act && act.task().equals(task.id()))
                .map(entry -> new Since(Since.Kind.DONE, Optional.of(entry.at()), Optional.of(entry)));
        Stream<Since> gear = task.gear().stream().flatMap(id -> ofGear(task, id));
        return Stream.concat(done, gear)
                .max(Comparator.comparing(since -> since.at().orElseThrow()))
                .orElse(Since.NEVER);
    }

    private Stream<Since> ofGear(Task task, String gear) {
        Stream<Since> fitted = entries.stream()
                .filter(entry -> entry.act() instanceof Act.Fitted act && isAllOf(gear, act.gear()))
                .filter(entry -> task.after().isEmpty() || entry.putsIntoService())
                .map(entry -> new Since(Since.Kind.FITTED, Optional.of(entry.at()), Optional.of(entry)));
        Stream<Since> byRig =
                fittedByRig(gear).map(at -> new Since(Since.Kind.FITTED, Optional.of(at), Optional.empty()));
        Stream<Since> inspected = task.after().isEmpty()
                ? Stream.empty()
                : entries.stream()
                        .filter(entry -> entry.act() instanceof Act.Inspected act
                                && entry.putsIntoService()
                                && isAllOf(gear, act.gear()))
                        .map(entry -> new Since(Since.Kind.INSPECTED, Optional.of(entry.at()), Optional.of(entry)));
        return Stream.concat(Stream.concat(fitted, byRig), inspected);
    }

    /** The beginning of the day on which the rig says that it was fitted; not one that is still to come. */
    private Stream<Instant> fittedByRig(String gear) {
        return Optional.ofNullable(machine.gear().get(gear)).flatMap(Machine.Kept::fitted).stream()
                .map(day -> day.atStartOfDay(zone).toInstant())
                .filter(at -> !at.isAfter(now));
    }

    private Optional<Entry> last(String gear, Class<? extends Act> kind) {
        return entries.stream()
                .filter(entry -> kind.isInstance(entry.act()))
                .filter(entry ->
                        entry.act().subject().map(piece -> isAllOf(gear, piece)).orElse(false))
                .max(Comparator.comparing(Entry::at));
    }

    /** Whether an entry about {@code piece} is about all there is of {@code gear}: of several, one piece is not. */
    private boolean isAllOf(String gear, GearPiece piece) {
        Machine.Kept kept = machine.gear().get(gear);
        return piece.gear().equals(gear) && (piece.piece().isEmpty() || (kept != null && kept.count() == 1));
    }

    /** Whether there was work since that nobody can put a bound to; says why. */
    private boolean isOpen(Since since, List<String> doubts) {
        if (since.kind() == Since.Kind.NEVER) {
            return true;
        }
        if (machine.isIncomplete()) {
            doubts.add("Some recordings could not be read: what was worked in them is not known.");
            return true;
        }
        Optional<Instant> first = machine.firstRecorded();
        LocalDate sinceDay = day(since.at().orElseThrow());
        if (first.isEmpty()) {
            doubts.add("No recording with a clock was given: what was worked since is not known.");
            return true;
        }
        if (sinceDay.isBefore(day(first.get())) && !isBridged(sinceDay, day(first.get()))) {
            doubts.add("Nothing is recorded between " + sinceDay + " and " + day(first.get())
                    + ": give those recordings too, or enter what was worked (service worked).");
            return true;
        }
        return false;
    }

    private boolean isBridged(LocalDate from, LocalDate to) {
        return unlogged.stream()
                .anyMatch(stint -> !day(stint.start().orElseThrow()).isAfter(from)
                        && !day(stint.end().orElseThrow()).isBefore(to));
    }

    private Amount amount(Meter meter, Optional<String> gear, Since since, boolean isOpen) {
        Amount amount = switch (meter) {
            case DAYS -> days(since);
            case USE_DAYS -> new UseDays(zone).since(since, work());
            default -> sum(meter, gear, since);
        };
        boolean byCalendar = meter == Meter.DAYS && since.kind() != Since.Kind.NEVER;
        return isOpen && !byCalendar ? Amount.atLeast(amount.least()) : amount;
    }

    private Amount days(Since since) {
        Optional<Instant> from = since.at().or(machine::firstRecorded);
        return from.map(at -> Amount.known((double) Math.max(0, ChronoUnit.DAYS.between(day(at), day(now)))))
                .orElse(Amount.UNKNOWN);
    }

    private Amount sum(Meter meter, Optional<String> gear, Since since) {
        Amount sum = Amount.NONE;
        for (Stint stint : work()) {
            Amount one = stint.amount(meter, gear);
            if (since.at().isEmpty() || stint.endedAfter(since.at().get())) {
                sum = sum.plus(one);
            } else if (stint.end().isEmpty()) {
                sum = sum.plus(one.perhaps());
            }
        }
        return sum;
    }

    /** All that was worked: recorded outings, then hours entered by hand. */
    public List<Stint> work() {
        return Stream.concat(machine.recorded().stream(), unlogged.stream()).toList();
    }

    private List<Happening> calls(Task task, Since since) {
        return task.after().stream()
                .flatMap(kind -> machine.recorded().stream()
                        .flatMap(stint -> stint.happenings().stream())
                        .filter(happening -> happening.kind().equals(kind))
                        .filter(happening -> happening.concerns(task.gear()))
                        .filter(happening -> happening.at().map(since::isBefore).orElse(true)))
                .toList();
    }

    /** One without a time may lie before what was done; not when nothing was ever done. */
    private static boolean surelySince(Happening call, Since since) {
        return call.at().isPresent() || since.kind() == Since.Kind.NEVER;
    }

    /** Due by what happened; overdue when it was used on. */
    private Standing byCalls(Task task, List<Happening> calls) {
        boolean wasUsedOn = calls.stream()
                .flatMap(call -> call.at().stream())
                .min(Instant::compareTo)
                .map(first -> work().stream().anyMatch(stint -> stint.beganAfter(first) && uses(stint, task)))
                .orElse(false);
        if (wasUsedOn) {
            return Standing.OVERDUE;
        }
        return calls.isEmpty() ? Standing.LATER : Standing.DUE;
    }

    private static boolean uses(Stint stint, Task task) {
        Amount pulls = stint.amount(Meter.PULLS, task.gear());
        return task.gear().isEmpty() || pulls.greatest().orElse(1) > 0;
    }

    private LocalDate day(Instant at) {
        return at.atZone(zone).toLocalDate();
    }
}
