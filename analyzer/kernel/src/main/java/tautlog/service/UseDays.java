package tautlog.service;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Counts local days on which something was worked. */
final class UseDays {
    private final ZoneId zone;

    UseDays(ZoneId zone) {
        this.zone = zone;
    }

    /** Of hours entered by hand over several days at least one day was worked; of an outing without a clock none for certain. */
    Amount since(Since since, List<Stint> stints) {
        Set<LocalDate> certain = new HashSet<>();
        Set<LocalDate> possible = new HashSet<>();
        int undated = 0;
        for (Stint stint : stints) {
            if (stint.end().isEmpty()) {
                undated++;
            } else if (since.at().isEmpty() || stint.endedAfter(since.at().get())) {
                Set<LocalDate> days = days(stint, since);
                possible.addAll(days);
                certain.add(days.stream().max(LocalDate::compareTo).orElseThrow());
            }
        }
        return Amount.between(certain.size(), possible.size() + undated);
    }

    private Set<LocalDate> days(Stint stint, Since since) {
        Instant start = stint.start().orElseThrow();
        Instant from = since.at().filter(start::isBefore).orElse(start);
        LocalDate first = from.atZone(zone).toLocalDate();
        // an end at midnight does not touch the day that begins
        LocalDate last = stint.end().orElseThrow().minusNanos(1).atZone(zone).toLocalDate();
        Set<LocalDate> days = new HashSet<>();
        for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
            days.add(day);
        }
        days.add(first);
        return days;
    }
}
