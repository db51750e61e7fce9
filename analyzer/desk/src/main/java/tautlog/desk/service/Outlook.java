package tautlog.desk.service;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * When an interval will be reached.
 *
 * @param earliest not before this day with 95 % in all; empty when not before {@link Forecaster#HORIZON_DAYS}
 * @param expected by the mean; empty as before
 * @param latest not after this day; empty when it cannot be said
 */
record Outlook(Optional<LocalDate> earliest, Optional<LocalDate> expected, Optional<LocalDate> latest) {
    static Outlook on(LocalDate day) {
        return new Outlook(Optional.of(day), Optional.of(day), Optional.of(day));
    }

    /** Of two intervals the one that is reached first. */
    Outlook first(Outlook other) {
        return new Outlook(
                first(other, Outlook::earliest), first(other, Outlook::expected), first(other, Outlook::latest));
    }

    private Optional<LocalDate> first(Outlook other, Function<Outlook, Optional<LocalDate>> end) {
        return Stream.of(end.apply(this), end.apply(other))
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder());
    }
}
