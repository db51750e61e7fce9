package tautlog.usage;

import java.util.Comparator;
import java.util.OptionalLong;
import tautlog.rig.Band;

/**
 * One overload, seen from a piece of gear that carried more than it may, or may have.
 *
 * @param number of the overload's first sample
 * @param isDated false while the outing has no clock; {@code utcMicros} then means nothing
 * @param utcMicros microseconds since 1970-01-01T00:00Z at that sample
 * @param hookup in force, {@code hookupIsAssumed} when nobody had said so
 * @param band the worst figure of this gear that its load was greater than; {@link Band#PAST_WLL} when {@code onlyMayBe}
 * @param onlyMayBe by no reading past what it may carry, but its allowed load is only known as "at most"
 * @param loadNewtons on this gear at the overload's greatest tension
 * @param allowedNewtons of this gear in that hookup
 * @param share load / allowed
 * @param governing this gear sets the hookup's limit
 * @param atLeast the reading was only a lower bound, or the allowed load only an upper one
 */
public record GearEvent(
        long number,
        boolean isDated,
        long utcMicros,
        String hookup,
        boolean hookupIsAssumed,
        Band band,
        boolean onlyMayBe,
        double loadNewtons,
        double allowedNewtons,
        double share,
        boolean governing,
        boolean atLeast) {
    /** In the order of time, undated ones first; total, so that lists that hold the same events are equal. */
    static final Comparator<GearEvent> ORDER = Comparator.comparing(GearEvent::isDated)
            .thenComparing(GearEvent::utcMicros)
            .thenComparing(GearEvent::number)
            .thenComparing(GearEvent::hookup)
            .thenComparing(GearEvent::band)
            .thenComparing(GearEvent::share)
            .thenComparing(GearEvent::loadNewtons)
            .thenComparing(GearEvent::toString);

    /** The same, begun at {@code utcMicros}. */
    GearEvent at(long utcMicros) {
        return new GearEvent(
                number,
                true,
                utcMicros,
                hookup,
                hookupIsAssumed,
                band,
                onlyMayBe,
                loadNewtons,
                allowedNewtons,
                share,
                governing,
                atLeast);
    }

    /** When it began; empty while the outing has no clock. */
    public OptionalLong at() {
        return isDated ? OptionalLong.of(utcMicros) : OptionalLong.empty();
    }
}
