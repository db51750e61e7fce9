package tautlog.desk.incident;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.desk.report.Entry;
import tautlog.desk.report.ItemLoad;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Known;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/**
 * What a report on one moment is about: the worst overload in its window or, without one, the pull with the greatest share.
 *
 * @param overLimit yes for an overload; of a pull whether it may have been: see {@link Entry.Pull#overLimit()}
 * @param peakNewtons the greatest tension
 * @param atLeast it is a lower bound
 * @param isComplete false where a gap or the outing's end cut it, or readings are missing in it: it may have been more
 * @param items what each item carried then
 */
public record Subject(
        Moment start,
        Moment end,
        Known overLimit,
        double peakNewtons,
        Interval peakInterval,
        Entry.Against against,
        double share,
        Bounds shareBounds,
        boolean atLeast,
        boolean isComplete,
        List<ItemLoad> items) {
    public Subject {
        items = List.copyOf(items);
    }

    static Optional<Subject> of(Report window, List<Rig> rigs) {
        Optional<Subject> overload = window.overloads().stream()
                .max(Comparator.comparing(Entry.Overload::band).thenComparing(Entry.Overload::share))
                .map(Subject::of);
        return overload.or(() -> window.pulls().stream()
                .max(Comparator.comparingDouble(Entry.Pull::share))
                .map(pull -> of(pull, rigs.get(pull.start().outing() - 1))));
    }

    private static Subject of(Entry.Overload overload) {
        return new Subject(
                overload.start(),
                overload.end(),
                Known.YES,
                overload.peakNewtons(),
                overload.peakInterval(),
                overload.against(),
                overload.share(),
                overload.shareBounds(),
                overload.atLeast(),
                !(overload.hasGap() || overload.cutByGap() || overload.cutByEnd()),
                overload.items());
    }

    private static Subject of(Entry.Pull pull, Rig rig) {
        return new Subject(
                pull.start(),
                pull.end(),
                pull.overLimit(),
                pull.peakNewtons(),
                pull.peakInterval(),
                pull.against(),
                pull.share(),
                pull.shareBounds(),
                pull.atLeast(),
                !(pull.hasGap() || pull.cutByGap() || pull.cutByEnd()),
                items(pull, rig));
    }

    private static List<ItemLoad> items(Entry.Pull pull, Rig rig) {
        Optional<Hookup> hookup = rig.hookup(pull.against().hookup());
        java.math.BigDecimal peak = java.math.BigDecimal.valueOf(pull.peakNewtons());
        return hookup.map(Hookup::items).orElse(List.of()).stream()
                .map(item -> ItemLoad.of(item, peak, pull.peakInterval()))
                .toList();
    }
}
