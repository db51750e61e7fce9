package tautlog.desk.incident;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Report;

/**
 * A report less what lies outside a window. A pull that reaches out of it is told whole: its peak and share are those of all of it, so
 * its overloads, shocks and jolts come with it. What it says of trust, hours and what could not be read stays that of all recordings.
 */
final class WindowReport {
    private WindowReport() {}

    /** @param inForce ids of the hookups that were on in the window */
    static Report of(Report all, Window window, Set<String> inForce) {
        List<Entry.Pull> pulls = in(window, all.pulls());
        List<Entry.Overload> overloads = with(pulls, window, all.overloads());
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
                all.hookupsNotKnown().stream()
                        .filter(stretch -> window.holds(stretch.start(), stretch.end()))
                        .toList(),
                pulls,
                overloads,
                with(pulls, window, all.shocks()),
                with(pulls, window, all.jolts()),
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

    /** What lies in the window, and what the pulls under way in it hold. */
    private static <E extends Entry> List<E> with(List<Entry.Pull> pulls, Window window, List<E> entries) {
        return entries.stream()
                .filter(entry -> window.holds(entry.start(), entry.end())
                        || pulls.stream().anyMatch(pull -> isPart(entry, pull)))
                .toList();
    }

    /** A shock starts in the slack before its pull: where its peak lies counts. */
    private static boolean isPart(Entry entry, Entry.Pull pull) {
        return entry.end().outing() == pull.start().outing()
                && entry.end().seconds() >= pull.start().seconds()
                && entry.end().seconds() <= pull.end().seconds();
    }
}
