package tautlog.service;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a winch worked in one go: one recorded outing, or hours entered by hand.
 *
 * @param start empty while the outing has no clock; then {@code end} is, too
 * @param amounts of the meters that add up; one that is missing is unknown
 * @param gearPulls pulls of each item of gear that was in use; empty when that cannot be told
 * @param happenings in the order of time
 */
public record Stint(
        Optional<Instant> start,
        Optional<Instant> end,
        Map<Meter, Amount> amounts,
        Optional<Map<String, Amount>> gearPulls,
        List<Happening> happenings) {
    public Stint {
        EnumMap<Meter, Amount> copy = new EnumMap<>(Meter.class);
        copy.putAll(amounts);
        amounts = Collections.unmodifiableMap(copy);
        gearPulls = gearPulls.map(Map::copyOf);
        happenings = List.copyOf(happenings);
    }

    /** What a meter counted; a task on gear counts the gear's own pulls, and of the other meters the winch's. */
    public Amount amount(Meter meter, Optional<String> gear) {
        if (meter == Meter.PULLS && gear.isPresent()) {
            return gearPulls
                    .map(pulls -> pulls.getOrDefault(gear.get(), Amount.NONE))
                    .orElseGet(() -> amount(Meter.PULLS, Optional.empty()).perhaps());
        }
        return amounts.getOrDefault(meter, Amount.UNKNOWN);
    }

    /** Whether it was still going on after {@code since}: then all of it counts as after. */
    boolean endedAfter(Instant since) {
        return end.map(last -> last.isAfter(since)).orElse(false);
    }

    boolean beganAfter(Instant moment) {
        return start.map(first -> first.isAfter(moment)).orElse(false);
    }
}
