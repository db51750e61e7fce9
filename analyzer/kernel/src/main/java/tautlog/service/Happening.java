package tautlog.service;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A finding that may call for service.
 *
 * @param kind {@code overload}, {@code shock} …
 * @param at empty while the outing has no clock
 * @param gear what it concerned; empty when that cannot be told: then it may concern any
 */
public record Happening(String kind, Optional<Instant> at, List<String> gear) {
    public Happening {
        gear = List.copyOf(gear);
    }

    boolean concerns(Optional<String> piece) {
        return piece.isEmpty() || gear.isEmpty() || gear.contains(piece.get());
    }
}
