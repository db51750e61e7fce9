package tautlog.desk.incident;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
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
 * What a report on one moment is about: the worst overload in its window or, without one, the pull or shock with the greatest share.
 *
 * @param overLimit yes for an overload; else whether the true pull may have been, see {@link Entry.Pull#overLimit()}: not known as well
 *     where that of another shock in the window is not
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
        return overload.or(() -> Stream.concat(
                        window.pulls().stream().map(pull -> of(pull, rigs)),
                        window.shocks().stream().map(shock -> of(shock, rigs)))
                .max(Comparator.comparingDouble(Subject::share))
                .map(greatest -> greatest.doubtedBy(window.shocks())));
    }

    private Subject doubtedBy(List<Entry.Shock> shocks) {
        boolean isSure = overLimit != Known.NO || shocks.stream().allMatch(shock -> overLimit(shock) == Known.NO);
        return isSure
                ? this
                : new Subject(
                        start,
                        end,
                        Known.UNKNOWN,
                        peakNewtons,
                        peakInterval,
                        against,
                        share,
                        shareBounds,
                        atLeast,
                        isComplete,
                        items);
    }

    private static Known overLimit(Entry.Shock shock) {
        OptionalDouble high = shock.peakInterval().highNewtons();
        boolean isOpen = high.isEmpty() || shock.atLeast() || shock.hasGap() || !shock.resolved();
        if (isOpen || shock.against().isAtMost()) {
            return Known.UNKNOWN;
        }
        return high.getAsDouble() > shock.against().newtons() ? Known.YES : Known.NO;
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

    private static Subject of(Entry.Pull pull, List<Rig> rigs) {
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
                items(
                        pull.against(),
                        pull.peakNewtons(),
                        pull.peakInterval(),
                        rigs.get(pull.start().outing() - 1)));
    }

    private static Subject of(Entry.Shock shock, List<Rig> rigs) {
        return new Subject(
                shock.start(),
                shock.end(),
                overLimit(shock),
                shock.peakNewtons(),
                shock.peakInterval(),
                shock.against(),
                shock.share(),
                shock.shareBounds(),
                shock.atLeast(),
                !shock.hasGap(),
                items(
                        shock.against(),
                        shock.peakNewtons(),
                        shock.peakInterval(),
                        rigs.get(shock.start().outing() - 1)));
    }

    private static List<ItemLoad> items(Entry.Against against, double peakNewtons, Interval interval, Rig rig) {
        Optional<Hookup> hookup = rig.hookup(against.hookup());
        BigDecimal peak = BigDecimal.valueOf(peakNewtons);
        return hookup.map(Hookup::items).orElse(List.of()).stream()
                .map(item -> ItemLoad.of(item, rig, peak, interval))
                .toList();
    }
}
