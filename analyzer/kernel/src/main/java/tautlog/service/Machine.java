package tautlog.service;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.rig.GearKind;

/**
 * A winch, its gear and what is known of its work.
 *
 * @param gear by id, as the latest rig says
 * @param recorded its outings
 * @param isIncomplete some recording or outing could not be read
 */
public record Machine(String winch, Map<String, Kept> gear, List<Stint> recorded, boolean isIncomplete) {
    public Machine {
        gear = Collections.unmodifiableMap(new LinkedHashMap<>(gear));
        recorded = List.copyOf(recorded);
    }

    /**
     * Gear that the rig names.
     *
     * @param count identical pieces
     * @param fitted when the rig says that it was taken into use
     */
    public record Kept(GearKind kind, int count, Optional<LocalDate> fitted) {}

    /** The same, without outings that began after {@code end}; those without a clock stay. */
    public Machine until(Instant end) {
        List<Stint> begun = recorded.stream()
                .filter(stint -> stint.start().map(start -> !start.isAfter(end)).orElse(true))
                .toList();
        return new Machine(winch, gear, begun, isIncomplete);
    }

    /** When the last recording with a clock ends. */
    public Optional<Instant> lastRecorded() {
        return recorded.stream().flatMap(stint -> stint.end().stream()).max(Instant::compareTo);
    }

    /** When the first recording with a clock begins. */
    Optional<Instant> firstRecorded() {
        return recorded.stream().flatMap(stint -> stint.start().stream()).min(Instant::compareTo);
    }
}
