package tautlog.desk.gear;

import java.time.Instant;
import java.util.Optional;
import tautlog.usage.GearEvent;

/**
 * An overload of a piece of gear and when it was.
 *
 * @param at empty while its outing has no clock
 * @param notAfter it was then or before; empty when nobody can say
 */
public record GearLoad(GearEvent event, Optional<Instant> at, Optional<Instant> notAfter) {
    static GearLoad of(GearEvent event, GearOuting outing) {
        if (event.at().isEmpty()) {
            return new GearLoad(event, Optional.empty(), outing.notAfter());
        }
        long micros = event.at().getAsLong();
        Instant at =
                Instant.ofEpochSecond(Math.floorDiv(micros, 1_000_000L), Math.floorMod(micros, 1_000_000L) * 1_000L);
        return new GearLoad(event, Optional.of(at), Optional.of(at));
    }

    /** Whether it surely was before {@code time}. */
    boolean wasBefore(Instant time) {
        return notAfter.map(latest -> latest.isBefore(time)).orElse(false);
    }
}
