package tautlog.desk.service;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.service.Judge;
import tautlog.service.Machine;
import tautlog.service.Meter;
import tautlog.service.Standing;
import tautlog.service.Stint;
import tautlog.service.TaskState;

/**
 * Says when tasks will be due, from the use of the last weeks ({@link WeeklyUse}). Days on which the winch never worked use nothing up: a
 * date falls on a day of the week with use.
 */
final class Forecaster {
    /** Chosen: beyond two years nobody plans by the use of twelve weeks. */
    static final int HORIZON_DAYS = 730;

    private final Map<String, List<Stint>> workByWinch;
    private final LocalDate today;
    private final ZoneId zone;

    private Forecaster(Map<String, List<Stint>> workByWinch, LocalDate today, ZoneId zone) {
        this.workByWinch = workByWinch;
        this.today = today;
        this.zone = zone;
    }

    /** A forecast for each task, in the order of {@code state}. */
    static List<TaskForecast> of(ServiceState state) {
        Map<String, List<Stint>> work =
                state.machines().stream().collect(Collectors.toMap(Machine::winch, machine -> work(state, machine)));
        LocalDate today = state.asOf().atZone(state.zone()).toLocalDate();
        Forecaster forecaster = new Forecaster(work, today, state.zone());
        return state.tasks().stream().map(forecaster::task).toList();
    }

    private static List<Stint> work(ServiceState state, Machine machine) {
        return new Judge(machine, state.entriesOf(machine.winch()), state.asOf(), state.zone()).work();
    }

    private TaskForecast task(TaskState state) {
        if (state.standing() == Standing.OVERDUE || state.standing() == Standing.DUE) {
            return new TaskForecast(state, Optional.of(Outlook.on(today)), List.of("Due now."));
        }
        if (state.meters().isEmpty()) {
            return new TaskForecast(
                    state,
                    Optional.empty(),
                    List.of("Due when it happens: " + state.task().after().orElse("") + "."));
        }
        Set<String> basis = new LinkedHashSet<>();
        List<Outlook> outlooks = new ArrayList<>();
        for (TaskState.Used used : state.meters()) {
            outlook(state, used, basis).ifPresent(outlooks::add);
        }
        Optional<Outlook> first = outlooks.stream().reduce(Outlook::first);
        return new TaskForecast(state, first, List.copyOf(basis));
    }

    private Optional<Outlook> outlook(TaskState state, TaskState.Used used, Set<String> basis) {
        if (used.meter() == Meter.DAYS) {
            basis.add("Days are counted by the calendar.");
            return Optional.of(byCalendar(used));
        }
        List<Stint> work = workByWinch.getOrDefault(state.winch(), List.of());
        Optional<WeeklyUse> use = WeeklyUse.of(work, used.meter(), state.task().gear(), today, zone);
        if (use.isEmpty()) {
            basis.add("Not enough use to say when by " + used.meter().words() + ": fewer than "
                    + WeeklyUse.LEAST_WEEKS_WITH_USE + " of the last whole weeks have any that is known.");
            // what may be due now is not put off because nobody knows when it will be
            return mayBeReached(used)
                    ? Optional.of(new Outlook(Optional.of(today), Optional.empty(), Optional.empty()))
                    : Optional.empty();
        }
        basis.add(String.format(
                Locale.ROOT,
                "%.1f %s a week, by the last %d whole weeks; with 95 %% if the next are like them.",
                use.get().mean(),
                used.meter().words(),
                use.get().weeks().size()));
        if (use.get().isPartial()) {
            basis.add("Part of that use is not known: it may be sooner.");
        }
        return Optional.of(byUse(used, use.get(), workedToday(work)));
    }

    private static boolean mayBeReached(TaskState.Used used) {
        return used.amount().greatest().orElse(Double.POSITIVE_INFINITY)
                >= used.interval().doubleValue();
    }

    private Outlook byCalendar(TaskState.Used used) {
        long left = used.interval().longValueExact() - (long) used.amount().least();
        LocalDate due = today.plusDays(Math.max(0, left));
        return used.amount().greatest().isPresent()
                ? Outlook.on(due)
                : new Outlook(Optional.of(today), Optional.of(due), Optional.of(due));
    }

    private boolean workedToday(List<Stint> work) {
        return work.stream()
                .flatMap(stint -> stint.start().stream())
                .anyMatch(start -> start.atZone(zone).toLocalDate().equals(today));
    }

    /** Today counts as a day to come while nothing was worked on it. */
    private Outlook byUse(TaskState.Used used, WeeklyUse use, boolean workedToday) {
        double interval = used.interval().doubleValue();
        double left = interval - used.deciding();
        double leastLeft = interval - used.amount().greatest().orElse(Double.POSITIVE_INFINITY);
        Optional<LocalDate> earliest = leastLeft <= 0 ? Optional.of(today) : Optional.empty();
        Optional<LocalDate> expected = Optional.empty();
        Optional<LocalDate> latest = Optional.empty();
        double weeks = 0;
        for (int i = workedToday ? 1 : 0; i <= HORIZON_DAYS && latest.isEmpty(); i++) {
            LocalDate day = today.plusDays(i);
            if (use.share(day) == 0) {
                continue;
            }
            weeks += use.share(day);
            double mean = weeks * use.mean();
            double half = use.half(weeks);
            earliest = earliest.isEmpty() && mean + half >= leastLeft ? Optional.of(day) : earliest;
            expected = expected.isEmpty() && mean >= left ? Optional.of(day) : expected;
            latest = mean - half >= left ? Optional.of(day) : latest;
        }
        return new Outlook(earliest, expected, latest);
    }
}
