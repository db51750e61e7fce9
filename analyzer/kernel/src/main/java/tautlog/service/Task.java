package tautlog.service;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Something to be done again and again.
 *
 * @param id as the ledger names it
 * @param gear what it is done to; empty: the winch and its driveline
 * @param every how much of a meter may pass; of several the first that is reached counts
 * @param after the kind of finding that calls for it: {@code overload}
 * @param earlyPercent of the interval before it is due from which on it is due soon
 * @param latePercent of the interval after it is due from which on it is overdue
 * @param source where the interval comes from
 * @param how what to do
 */
public record Task(
        String id,
        String title,
        Optional<String> gear,
        Map<Meter, BigDecimal> every,
        Optional<String> after,
        BigDecimal earlyPercent,
        BigDecimal latePercent,
        Optional<String> source,
        Optional<String> how) {
    public Task {
        EnumMap<Meter, BigDecimal> copy = new EnumMap<>(Meter.class);
        copy.putAll(every);
        every = Collections.unmodifiableMap(copy);
    }
}
