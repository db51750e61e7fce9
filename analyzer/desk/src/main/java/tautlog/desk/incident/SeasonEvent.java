package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;

/**
 * An overload, pull or shock elsewhere in the recordings that is like the one reported on.
 *
 * @param kind {@code overload}, {@code pull} or {@code shock}
 */
public record SeasonEvent(
        Moment at,
        String kind,
        double peakNewtons,
        Interval peakInterval,
        double share,
        Bounds shareBounds,
        boolean atLeast,
        Entry.Against against) {
    /** Chosen: what came within a tenth of it is worth knowing. */
    static final double LEAST_PART = 0.9;

    /**
     * Overloads and shocks, and pulls without an overload, against the same hookup or with the same gear setting the limit, whose share
     * is {@link #LEAST_PART} of the subject's or more; in the order of time.
     *
     * @param told what is told of the moment itself, left out
     */
    static List<SeasonEvent> like(Subject subject, Report all, Report told) {
        Stream<SeasonEvent> events = Stream.of(
                        all.overloads().stream()
                                .filter(one -> !told.overloads().contains(one))
                                .map(SeasonEvent::of),
                        all.shocks().stream()
                                .filter(one -> !told.shocks().contains(one))
                                .map(SeasonEvent::of),
                        all.pulls().stream()
                                .filter(pull ->
                                        pull.overloads() == 0 && !told.pulls().contains(pull))
                                .map(SeasonEvent::of))
                .flatMap(each -> each);
        List<SeasonEvent> like = new ArrayList<>(events.filter(event -> isAlike(event.against(), subject.against()))
                .filter(event -> event.share() >= LEAST_PART * subject.share())
                .toList());
        like.sort(Comparator.comparing(SeasonEvent::at));
        return like;
    }

    private static boolean isAlike(Entry.Against one, Entry.Against other) {
        return one.hookup().equals(other.hookup()) || one.governing().equals(other.governing());
    }

    private static SeasonEvent of(Entry.Overload overload) {
        return new SeasonEvent(
                overload.start(),
                "overload",
                overload.peakNewtons(),
                overload.peakInterval(),
                overload.share(),
                overload.shareBounds(),
                overload.atLeast(),
                overload.against());
    }

    private static SeasonEvent of(Entry.Shock shock) {
        return new SeasonEvent(
                shock.at(),
                "shock",
                shock.peakNewtons(),
                shock.peakInterval(),
                shock.share(),
                shock.shareBounds(),
                shock.atLeast(),
                shock.against());
    }

    private static SeasonEvent of(Entry.Pull pull) {
        return new SeasonEvent(
                pull.start(),
                "pull",
                pull.peakNewtons(),
                pull.peakInterval(),
                pull.share(),
                pull.shareBounds(),
                pull.atLeast(),
                pull.against());
    }
}
