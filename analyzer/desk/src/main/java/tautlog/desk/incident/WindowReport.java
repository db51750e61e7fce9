package tautlog.desk.incident;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;

/** A report less what lies outside a window. What it says of trust, hours and what could not be read stays that of all recordings. */
final class WindowReport {
    private WindowReport() {}

    /** @param inForce ids of the hookups that were on in the window */
    static Report of(Report all, Window window, Set<String> inForce) {
        List<Entry.Pull> pulls = in(window, all.pulls());
        List<Entry.Overload> overloads = in(window, all.overloads());
        Set<String> hookups = Stream.of(
                        inForce.stream(),
                        pulls.stream().map(pull -> pull.against().hookup()),
                        overloads.stream().map(overload -> overload.against().hookup()))
                .flatMap(ids -> ids)
                .collect(Collectors.toSet());
        return new Report(
                all.recordings(),
                all.hookups().stream()
                        .filter(hookup -> hookups.contains(hookup.id()))
                        .toList(),
                pulls,
                overloads,
                in(window, all.shocks()),
                in(window, all.jolts()),
                in(window, all.drops()),
                in(window, all.stalls()),
                in(window, all.trouble()),
                all.marks().stream().filter(mark -> window.holds(mark.at())).toList(),
                all.hours(),
                all.trust(),
                all.whatIf(),
                all.notes(),
                all.blindSpots(),
                all.leftOut());
    }

    private static <E extends Entry> List<E> in(Window window, List<E> entries) {
        return entries.stream()
                .filter(entry -> window.holds(entry.start(), entry.end()))
                .toList();
    }
}
